import type { Ceiling } from '../../ceiling/model.ts';
import type { RoomOnPage } from '../../pages/page.ts';
import { putUpOnPage } from '../../pages/put-up/content.ts';
import { dryFitOf } from '../../pipeline/inspect-closely.ts';
import { layoutOf } from '../../pipeline/inspect.ts';
import { puttingUpOf } from '../../putup/put-up.ts';
import { roomsBefore } from '../../report/put-up/days.ts';
import type { RoomPutUp } from '../../report/put-up/content.ts';
import { PartByPart } from './part-by-part.ts';

/**
 * Works out how the rooms in panes are put up, one after the other and a part at a time, so that whatever the editor asks meanwhile is answered first;
 * not while somebody types. What a room has got is kept with its ceiling.
 */
export class Orders {
    private waiting: { readonly ceiling: Ceiling; readonly place: string; readonly parts: Iterator<undefined> }[] = [];
    private readonly failed = new WeakSet<Ceiling>();
    private readonly parts: PartByPart;

    /** `changed`: called when that of a room is there. */
    constructor(typing: { readonly now: boolean }, private readonly changed: () => void) {
        this.parts = new PartByPart(typing, () => this.waiting.length > 0, () => this.part(this.waiting[0]!));
    }

    /** Works it out where nobody has. Undefined where that fails: whoever asks then hears why. */
    of({ ceiling, file, layout: { room } }: RoomOnPage): RoomPutUp | 'looking' | undefined {
        if (putUpOnPage.has(ceiling)) return putUpOnPage(ceiling);
        if (this.failed.has(ceiling)) return undefined;
        const place = `${file.uri} ${room.name}`;
        if (!this.waiting.some(each => each.ceiling === ceiling)) {
            const before = roomsBefore(room).flatMap(other => layoutOf(other).ceiling ?? []);
            // what the room was before is of no use to anybody
            this.waiting = [...this.waiting.filter(each => each.place !== place), { ceiling, place, parts: partsOf(ceiling, before) }];
        }
        this.parts.begin();
        return 'looking';
    }

    /** Nobody looks at them any more. */
    stop(): void {
        this.parts.stop();
        this.waiting = [];
    }

    private part(work: typeof this.waiting[number]): void {
        try {
            if (!work.parts.next().done) return;
        } catch {
            this.failed.add(work.ceiling);
        }
        this.waiting = this.waiting.filter(each => each !== work);
        this.changed();
    }
}

/** What its content is made of, part by part; `before`: ceilings of rooms that it waits for. */
function* partsOf(ceiling: Ceiling, before: readonly Ceiling[]): Generator<undefined, void> {
    for (const own of [...before, ceiling]) {
        yield* dryFitOf.inSteps(own);
        yield;
        yield* puttingUpOf(own);
        yield;
    }
    putUpOnPage(ceiling);
}
