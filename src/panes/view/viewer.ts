import { PCFSoftShadowMap, PerspectiveCamera, Raycaster, Vector2, Vector3, WebGLRenderer } from 'three';
import { OrbitControls } from 'three/examples/jsm/controls/OrbitControls.js';
import { LENS } from '../../drawing/view/eye.ts';
import type { ViewContent, ViewPiece } from '../../pages/view/content.ts';
import type { Moment } from '../../pages/view/playing.ts';
import { changedIn } from '../../pages/view/render-changed.ts';
import { share, type Look, type ViewState } from '../../pages/view/state.ts';
import { paletteOf } from './colors.ts';
import { directionOf, standingFor } from './looks.ts';
import { CeilingScene } from './scene.ts';

/** What is lit up, and what is wrong, by key. */
interface Marks { readonly lit: ReadonlySet<string>; readonly wrong: ReadonlySet<string> }

/**
 * The picture on the canvas. It is drawn when something has changed and at no other time. Throws where the machine draws
 * nothing in three dimensions.
 */
export class Viewer {
    private readonly renderer: WebGLRenderer;
    private readonly camera = new PerspectiveCamera(LENS, 1, 1, 10000);
    private readonly controls: OrbitControls;
    private scene: CeilingScene | undefined;
    private content: ViewContent | undefined;
    private state: ViewState | undefined;
    private marks: Marks = { lit: new Set(), wrong: new Set() };
    private look: Look | null = 'floor';
    private moment: Moment | null = null;
    private isWaiting = false;
    frames = 0;

    constructor(private readonly canvas: HTMLCanvasElement) {
        this.renderer = new WebGLRenderer({ canvas, antialias: true, alpha: true });
        this.renderer.localClippingEnabled = true;
        this.renderer.shadowMap.enabled = true;
        this.renderer.shadowMap.type = PCFSoftShadowMap;
        this.renderer.shadowMap.autoUpdate = false;
        this.controls = new OrbitControls(this.camera, canvas);
        this.controls.zoomToCursor = true;
        this.controls.addEventListener('change', () => this.draw());
        // turned by hand, it stays as it is when the pane changes its size
        this.controls.addEventListener('start', () => { this.look = null; });
        // a graphics card that has slept has forgotten everything
        canvas.addEventListener('webglcontextrestored', () => this.repaint());
        new ResizeObserver(() => this.fitCanvas()).observe(canvas.parentElement!);
        const recolored = new MutationObserver(() => this.repaint());
        recolored.observe(document.body, { attributes: true, attributeFilter: ['class', 'data-vscode-theme-id'] });
        recolored.observe(document.documentElement, { attributes: true, attributeFilter: ['style', 'class'] });
        this.fitCanvas();
    }

    show(content: ViewContent | undefined, state: ViewState): void {
        const before = this.content;
        this.state = state;
        if (content !== before) {
            this.content = content;
            this.build();
            if (content && (!before || JSON.stringify(before.size) !== JSON.stringify(content.size))) this.lookFrom(this.look ?? 'floor');
        }
        this.apply();
    }

    /** While a slider is being moved: the state comes when it is let go. */
    preview(change: Partial<ViewState>): void {
        if (this.state) this.show(this.content, { ...this.state, ...change });
    }

    /** As it is seen at this moment of putting up; null: all of it. */
    stand(moment: Moment | null): void {
        const wasPlaying = this.moment !== null;
        this.moment = moment;
        const isOther = this.scene?.stand(moment) ?? false;
        if (wasPlaying !== (moment !== null)) this.markChanged();
        if (isOther) this.shaded();
        this.draw();
    }

    mark(marks: Marks): void {
        if (same(marks.lit, this.marks.lit) && same(marks.wrong, this.marks.wrong)) return;
        this.marks = marks;
        this.scene?.mark(marks.lit, marks.wrong);
        this.draw();
    }

    lookFrom(look: Look): void {
        this.look = look;
        this.place(directionOf(look));
    }

    /** All of it, from where the eye is. */
    fit(): void {
        this.place(this.camera.position.clone().sub(this.controls.target).normalize());
    }

    zoom(factor: number): void {
        this.look = null;
        const { camera, controls } = this;
        camera.position.sub(controls.target).multiplyScalar(factor).add(controls.target);
        controls.update();
        this.draw();
    }

    /** Turns about the middle: radians to the east and up. */
    turn(aside: number, up: number): void {
        this.look = null;
        const { camera, controls } = this;
        const away = camera.position.clone().sub(controls.target);
        const distance = away.length();
        const around = Math.atan2(away.x, away.z) + aside;
        const down = Math.min(Math.PI - 0.02, Math.max(0.02, Math.acos(away.y / distance) + up));
        camera.position.set(Math.sin(down) * Math.sin(around), Math.cos(down), Math.sin(down) * Math.cos(around)).multiplyScalar(distance).add(controls.target);
        controls.update();
        this.draw();
    }

    /** Shares of the picture to the right and up. */
    move(aside: number, up: number): void {
        this.look = null;
        const { camera, controls } = this;
        const span = camera.position.distanceTo(controls.target) * 2 * Math.tan(camera.fov * Math.PI / 360);
        const right = new Vector3().setFromMatrixColumn(camera.matrix, 0), above = new Vector3().setFromMatrixColumn(camera.matrix, 1);
        const shift = right.multiplyScalar(aside * span).add(above.multiplyScalar(up * span));
        camera.position.add(shift);
        controls.target.add(shift);
        controls.update();
        this.draw();
    }

    pieceAt(event: { readonly clientX: number; readonly clientY: number }): ViewPiece | undefined {
        if (!this.scene) return undefined;
        const { left, top, width, height } = this.canvas.getBoundingClientRect();
        const ray = new Raycaster();
        ray.setFromCamera(new Vector2((event.clientX - left) / width * 2 - 1, 1 - (event.clientY - top) / height * 2), this.camera);
        for (const { object, faceIndex, point } of ray.intersectObjects([...this.scene.meshes], false)) {
            const piece = this.scene.pieceAt(object, faceIndex ?? 0, point);
            if (piece) return piece;
        }
        return undefined;
    }

    /** The colors of the theme, which may have changed. */
    repaint(): void {
        this.build();
        this.apply();
    }

    private build(): void {
        this.scene?.dispose();
        this.scene = this.content && new CeilingScene(this.content, paletteOf(this.canvas.parentElement!));
        this.scene?.mark(this.marks.lit, this.marks.wrong);
    }

    private apply(): void {
        const { scene, state } = this;
        if (!scene || !state) return this.draw();
        scene.stand(this.moment);
        // ways are told from where pieces stand in the end
        scene.takeApart(this.moment ? 0 : share(state.apart));
        scene.cut(share(state.cut), state.cutFrom);
        scene.show(part => state.parts[part] !== false);
        this.markChanged();
        this.shaded();
        this.draw();
    }

    /** Not while it is put up: what is not up yet has not come. */
    private markChanged(): void {
        const { scene, content, state, moment } = this;
        if (content && state) scene?.showChanged(moment ? null : changedIn(content, state), this.renderer.getPixelRatio());
    }

    /** Pieces have come or gone: shadows and marks are others. */
    private shaded(): void {
        this.scene?.mark(this.marks.lit, this.marks.wrong);
        this.renderer.shadowMap.needsUpdate = true;
    }

    private place(direction: Vector3): void {
        if (!this.scene) return;
        const { camera, controls } = this;
        const { target, at } = standingFor(this.scene.bounds, direction, camera);
        const distance = at.distanceTo(target);
        controls.target.copy(target);
        camera.position.copy(at);
        camera.near = Math.max(0.5, distance / 200);
        camera.far = distance * 20;
        camera.updateProjectionMatrix();
        controls.update();
        this.draw();
    }

    private fitCanvas(): void {
        const { clientWidth, clientHeight } = this.canvas.parentElement!;
        if (clientWidth === 0 || clientHeight === 0) return;
        this.renderer.setPixelRatio(Math.min(2, devicePixelRatio));
        this.renderer.setSize(clientWidth, clientHeight, false);
        this.camera.aspect = clientWidth / clientHeight;
        this.camera.updateProjectionMatrix();
        if (this.look) this.lookFrom(this.look);
        this.draw();
    }

    /** In the next frame, once, however often it is asked for until then. */
    private draw(): void {
        if (this.isWaiting) return;
        this.isWaiting = true;
        requestAnimationFrame(() => {
            this.isWaiting = false;
            if (!this.scene) { this.renderer.clear(); return; }
            this.renderer.render(this.scene.scene, this.camera);
            this.frames++;
            this.canvas.dataset['frames'] = String(this.frames);
            this.canvas.dataset['forms'] = String(this.renderer.info.memory.geometries);
        });
    }
}

function same(a: ReadonlySet<string>, b: ReadonlySet<string>): boolean {
    return a.size === b.size && [...a].every(key => b.has(key));
}
