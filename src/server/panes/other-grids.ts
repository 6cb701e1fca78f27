import type { Room } from '../../job/model.ts';
import type { RoomOnPage } from '../../pages/page.ts';
import { t } from '../../pages/shared/words.ts';
import type { Suggestions } from '../../suggest/model.ts';
import { NO_SUGGESTIONS, suggesting } from '../../suggest/suggestions.ts';
import { breath } from '../breath.ts';

/** One room that somebody looks at. */
interface Work {
    readonly room: Room; readonly place: string; readonly errors: string;
    readonly steps: Generator<undefined, Suggestions>;
    known: Suggestions | 'looking';
}

/** How long it waits where somebody types. */
const TYPING_MS = 200;

/**
 * Looks for other grids of the rooms in panes, a part of one at a time, so that whatever the editor asks meanwhile is answered first; not while somebody
 * types. A room that is read anew is looked at anew.
 */
export class OtherGrids {
    private readonly all = new WeakMap<Room, Work>();
    private waiting: Work[] = [];
    private timer: ReturnType<typeof setTimeout> | undefined;

    /** `changed`: called when those of a room are there. */
    constructor(private readonly typing: { readonly now: boolean }, private readonly changed: () => void) {}

    /** Looks for them where nobody has. */
    of({ layout: { room }, file, standing }: RoomOnPage): Suggestions | 'looking' {
        const errors = standing.errors.map(({ place, message }) => `${place} ${message}`).join('\n'), known = this.all.get(room);
        if (known?.errors === errors) return known.known;
        const work: Work = { room, place: `${file.uri} ${room.name}`, errors, steps: suggesting(room, file, standing), known: 'looking' };
        this.all.set(room, work);
        // what the room was before is of no use to anybody
        this.waiting = [...this.waiting.filter(({ place }) => place !== work.place), work];
        this.timer ??= setTimeout(() => void this.step());
        return work.known;
    }

    /** Nobody looks at them any more. */
    stop(): void {
        clearTimeout(this.timer);
        this.timer = undefined;
        for (const { room } of this.waiting) this.all.delete(room);
        this.waiting = [];
    }

    private async step(): Promise<void> {
        const { timer } = this;
        await breath();
        // stopped meanwhile, or stopped and begun anew
        if (this.timer !== timer) return;
        const [work] = this.waiting;
        this.timer = undefined;
        if (!work) return;
        if (!this.typing.now && stepped(work)) {
            this.waiting = this.waiting.filter(each => each !== work);
            this.changed();
        }
        this.timer = setTimeout(() => void this.step(), this.typing.now ? TYPING_MS : 0);
    }
}

/** True where it is done. */
function stepped(work: Work): boolean {
    try {
        const { done, value } = work.steps.next();
        if (done) work.known = value;
    } catch (error) {
        work.known = { ...NO_SUGGESTIONS, room: work.room, nothing: t('Other grids could not be tried: {0}', String(error)) };
    }
    return work.known !== 'looking';
}
