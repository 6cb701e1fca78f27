import { secondsOf, stepsDone } from '../../pages/view/playing.ts';
import type { OrderInView } from '../../pages/view/order.ts';

/** What it tells: where it is, in steps and shares of them; and that it has come to the end of a step. */
interface Listener { at(at: number): void; step(done: number): void; stopped(): void }

/** Nothing moves for who wants it so: steps follow each other in jumps, so many seconds apart. */
const JUMP_SECONDS = 1.3;

/** Plays the order forwards and back, in the time of the screen. */
export class Player {
    direction: 1 | -1 | 0 = 0;
    private at = 0;
    private order: OrderInView | undefined;
    private frame: number | undefined;
    private last = 0;
    private waited = 0;

    constructor(private readonly listener: Listener, private readonly calm: () => boolean) {}

    /** Stands still there. */
    put(order: OrderInView | undefined, done: number | string): void {
        if (this.frame !== undefined) cancelAnimationFrame(this.frame);
        this.frame = undefined;
        this.direction = 0;
        this.order = order;
        this.at = order ? stepsDone(order, done) : 0;
    }

    play(direction: 1 | -1): void {
        if (!this.order) return;
        const end = direction > 0 ? this.order.steps.length : 0;
        // once more from the beginning
        if (this.at === end) this.at = this.order.steps.length - end;
        this.direction = direction;
        this.last = performance.now();
        this.waited = 0;
        this.tell();
        this.next();
    }

    /** Where it stands, or at the step that it is in the middle of. */
    stop(): void {
        if (this.direction === 0) return;
        if (this.frame !== undefined) cancelAnimationFrame(this.frame);
        this.frame = undefined;
        this.at = this.direction > 0 ? Math.ceil(this.at) : Math.floor(this.at);
        this.direction = 0;
        this.tell();
        this.listener.step(this.at);
        this.listener.stopped();
    }

    private next(): void {
        this.frame = requestAnimationFrame(now => this.tick(now));
    }

    private tick(now: number): void {
        const { order, direction } = this;
        if (!order || direction === 0) return;
        const seconds = Math.min(0.1, Math.max(0, (now - this.last) / 1000)), before = this.at, end = direction > 0 ? order.steps.length : 0;
        this.last = now;
        if (this.calm()) this.jump(seconds, direction);
        else {
            const step = order.steps[direction > 0 ? Math.floor(before) : Math.ceil(before) - 1]!;
            const bound = direction > 0 ? Math.floor(before) + 1 : Math.ceil(before) - 1, on = before + direction * seconds / secondsOf(step.pieces.length);
            this.at = direction > 0 ? Math.min(bound, on) : Math.max(bound, on);
        }
        if (this.at !== before) this.tell();
        if (this.at !== before && Number.isInteger(this.at) && this.at !== end) this.listener.step(this.at);
        if (this.at === end) this.stop(); else this.next();
    }

    private jump(seconds: number, direction: 1 | -1): void {
        this.waited += seconds;
        if (this.waited < JUMP_SECONDS) return;
        this.waited = 0;
        this.at += direction;
    }

    private tell(): void {
        this.listener.at(this.at);
    }
}
