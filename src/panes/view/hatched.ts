import { MeshBasicMaterial, type Color, type Plane } from 'three';
import type { Comes } from '../../pages/view/state.ts';

/**
 * Lines or dots of a color on a surface and nothing between them, so that the wood is seen and no one needs to tell colors: strokes for what is new,
 * level lines for what is cut from an old piece, dots for what comes from elsewhere. They lie on the screen and not on the wood: as close from near
 * and from far, and as they stand in the key below the picture (style.ts of the page).
 */
export function hatchedMaterial(how: Comes, color: Color, planes: Plane[], pixelRatio: number): MeshBasicMaterial {
    const material = new MeshBasicMaterial({ color, clippingPlanes: planes, polygonOffset: true, polygonOffsetFactor: -0.5, polygonOffsetUnits: -0.5 });
    material.onBeforeCompile = shader => {
        shader.uniforms['ratio'] = { value: pixelRatio };
        shader.fragmentShader = shader.fragmentShader
            .replace('#include <common>', '#include <common>\nuniform float ratio;')
            .replace('#include <clipping_planes_fragment>', `#include <clipping_planes_fragment>\nvec2 spot = gl_FragCoord.xy / ratio;\nif (${GAPS[how]}) discard;`);
    };
    material.customProgramCacheKey = () => `hatched ${how}`;
    return material;
}

/** Where there is nothing, in CSS pixels from the lower left. */
const GAPS: Readonly<Record<Comes, string>> = {
    'new': 'mod(spot.x - spot.y, 8.0) > 2.6',
    from: 'mod(spot.y, 7.0) > 2.0',
    elsewhere: 'length(mod(spot, 7.0) - 3.5) > 1.9',
};
