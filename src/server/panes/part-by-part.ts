import { breath } from '../breath.ts';

/** How long it waits where somebody types. */
const TYPING_MS = 200;

/** Work that is done a part at a time, so that whatever the editor asks meanwhile is answered first; not while somebody types. */
export class PartByPart {
    private timer: ReturnType<typeof setTimeout> | undefined;

    /** `part`: does the next part. It is called as long as there `is` work. */
    constructor(private readonly typing: { readonly now: boolean }, private readonly is: () => boolean, private readonly part: () => void) {}

    /** Begins where it has not begun. */
    begin(): void {
        this.timer ??= setTimeout(() => void this.step());
    }

    stop(): void {
        clearTimeout(this.timer);
        this.timer = undefined;
    }

    private async step(): Promise<void> {
        const { timer } = this;
        await breath();
        // stopped meanwhile, or stopped and begun anew
        if (this.timer !== timer) return;
        this.timer = undefined;
        if (!this.is()) return;
        if (!this.typing.now) this.part();
        this.timer = setTimeout(() => void this.step(), this.typing.now ? TYPING_MS : 0);
    }
}
