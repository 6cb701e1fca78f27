import type { LineSpec, Profile, Room } from '../job/model.ts';
import type { Section, WholeSection } from './model.ts';
import { isWhole, sectionOf } from './section.ts';

/**
 * The sections of a room's lines: the grid's profile, or the line's own, and the line's own held-down where it has one.
 * Each different section is worked out once, and kept under the profile's key (with a held-down of a line's own after it).
 */
export class LineSections {
    /** All sections of the room, the grid's own first. */
    readonly all = new Map<string, Section>();
    private readonly specs = new Map<string, LineSpec>();

    constructor(readonly room: Room) {
        for (const spec of room.lines) if (!this.specs.has(spec.name)) this.specs.set(spec.name, spec);
        this.grid();
        for (const name of this.specs.keys()) this.of(name);
    }

    /** What the text says of this line in particular. */
    spec(name: string): LineSpec | undefined {
        return this.specs.get(name);
    }

    /** The section of the grid's own profile. */
    grid(): Section | undefined {
        return this.of('');
    }

    of(name: string): Section | undefined {
        const spec = this.specs.get(name);
        const profile = spec?.beams?.value ?? this.room.grid?.beams?.value;
        if (!profile) return undefined;
        const key = spec?.heldDown ? `${profile.key} held down ${spec.heldDown.value.ticks}` : profile.key;
        let section = this.all.get(key);
        if (!section) this.all.set(key, section = sectionOf(profile, spec?.heldDown));
        return section;
    }

    /** The section of a profile as it is. */
    ofProfile(profile: Profile): Section {
        let section = this.all.get(profile.key);
        if (!section) this.all.set(profile.key, section = sectionOf(profile));
        return section;
    }

    whole(name: string): WholeSection | undefined {
        const section = this.of(name);
        return section && isWhole(section) ? section : undefined;
    }
}
