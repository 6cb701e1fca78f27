import type { Room } from '../../job/model.ts';
import type { RoomOnPage } from '../../pages/page.ts';
import { t } from '../../pages/shared/words.ts';
import type { Suggestions } from '../../suggest/model.ts';
import { NO_SUGGESTIONS, suggesting } from '../../suggest/suggestions.ts';
import { PartByPart } from './part-by-part.ts';

/** One room that somebody looks at. */
interface Work {
    readonly room: Room; readonly place: string; readonly errors: string;
    readonly steps: Generator<undefined, Suggestions>;
    known: Suggestions | 'looking';
}

/**
 * Looks for other grids of the rooms in panes, a part of one at a time, so that whatever the editor asks meanwhile is answered first; not while somebody
 * types. A room that is read anew is looked at anew.
 */
export class OtherGrids {
    private readonly all = new WeakMap<Room, Work>();
    private waiting: Work[] = [];
    private readonly parts: PartByPart;

    /** `changed`: called when those of a room are there. */
    constructor(typing: { readonly now: boolean }, private readonly changed: () => void) {
        this.parts = new PartByPart(typing, () => this.waiting.length > 0, () => this.part(this.waiting[0]!));
    }

    /** Looks for them where nobody has. */
    of({ layout: { room }, file, standing }: RoomOnPage): Suggestions | 'looking' {
        const errors = standing.errors.map(({ place, message }) => `${place} ${message}`).join('\n'), known = this.all.get(room);
        if (known?.errors === errors) return known.known;
        const work: Work = { room, place: `${file.uri} ${room.name}`, errors, steps: suggesting(room, file, standing), known: 'looking' };
        this.all.set(room, work);
        // what the room was before is of no use to anybody
        this.waiting = [...this.waiting.filter(({ place }) => place !== work.place), work];
        this.parts.begin();
        return work.known;
    }

    /** Nobody looks at them any more. */
    stop(): void {
        this.parts.stop();
        for (const { room } of this.waiting) this.all.delete(room);
        this.waiting = [];
    }

    private part(work: Work): void {
        if (!stepped(work)) return;
        this.waiting = this.waiting.filter(each => each !== work);
        this.changed();
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
