import { MeshLambertMaterial, type Color, type Plane } from 'three';

/**
 * Wood: its part's color, a little lighter or darker from board to board, with a grain that is felt rather than seen. The grain
 * is reckoned in the shader, from where on the board a spot lies: there are no pictures to load.
 */
export function woodMaterial(color: Color, planes: Plane[], flat: boolean): MeshLambertMaterial {
    const material = new MeshLambertMaterial({
        color, clippingPlanes: planes, clipShadows: true, polygonOffset: true, polygonOffsetFactor: 1, polygonOffsetUnits: 1,
    });
    if (flat) return material;
    material.onBeforeCompile = shader => {
        shader.vertexShader = shader.vertexShader
            .replace('#include <common>', '#include <common>\nattribute vec3 grain;\nvarying vec3 vGrain;')
            .replace('#include <begin_vertex>', '#include <begin_vertex>\nvGrain = grain;');
        shader.fragmentShader = shader.fragmentShader
            .replace('#include <common>', `#include <common>\nvarying vec3 vGrain;\n${NOISE}`)
            .replace('#include <color_fragment>', `#include <color_fragment>\n${GRAIN}`);
    };
    material.customProgramCacheKey = () => 'wood';
    return material;
}

const NOISE = `float hashed(vec2 p) { return fract(sin(dot(p, vec2(12.9898, 78.233))) * 43758.5453); }
float waves(vec2 p) {
    vec2 i = floor(p), f = fract(p);
    f = f * f * (3.0 - 2.0 * f);
    return mix(mix(hashed(i), hashed(i + vec2(1.0, 0.0)), f.x), mix(hashed(i + vec2(0.0, 1.0)), hashed(i + vec2(1.0, 1.0)), f.x), f.y);
}`;

/** Long waves along the board bend the lines across it; far away, where lines would flicker, they fade out. */
const GRAIN = `float bend = waves(vec2(vGrain.y * 0.05, vGrain.z * 0.7)) * 2.2;
float across = vGrain.z * 5.0 + bend * 3.0;
float fine = 1.0 - smoothstep(0.25, 0.9, fwidth(across));
float line = waves(vec2(across, vGrain.y * 0.11)) - 0.5;
diffuseColor.rgb *= 0.95 + 0.1 * vGrain.x + fine * 0.13 * line + 0.05 * (bend * 0.45 - 0.5);`;
