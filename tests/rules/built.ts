import { NO_RATES } from '../support/no-rates.ts';
import { isLaidOut, layOut } from '../../src/ceiling/layout.ts';
import { dryFit } from '../../src/dryfit/dry-fit.ts';
import type { Finding } from '../../src/findings/finding.ts';
import type { FileContent } from '../../src/job/file.ts';
import type { JobSettings, Profile, Room, Stock } from '../../src/job/model.ts';
import { runFitRules } from '../../src/rules/run-fit.ts';
import { runRules } from '../../src/rules/run.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import { jobBuilder, type Length, type ProfileWords, type RoomWords } from '../support/job-builder.ts';

/** Jobs put together by hand, for figures finer than a text can say. */
export const build = jobBuilder();

/** Findings of a file with these profiles and rooms in it. */
export function findingsOf(content: Content): Finding[] {
    const file = fileOf(content);
    return runRules(file, file.rooms.map(layOut));
}

/** How the cut lists of its rooms go together, whatever else is wrong with them. */
export function fitFindingsOf(content: Content): Finding[] {
    const file = fileOf(content);
    return file.rooms.map(layOut).filter(isLaidOut)
        .flatMap(layout => runFitRules(file, layout, takeOff(layout.ceiling), dryFit(layout.ceiling, takeOff(layout.ceiling))));
}

interface Content { readonly job?: JobSettings; readonly stocks?: Stock[]; readonly profiles?: Profile[]; readonly rooms?: Room[] }

function fileOf(content: Content): FileContent {
    return {
        uri: build.at().uri, job: content.job ?? build.settings(), rates: NO_RATES, stocks: content.stocks ?? [],
        profiles: content.profiles ?? [], rooms: content.rooms ?? [], alternates: [], findings: [], allowances: [],
    };
}

export function board(width: Length, thickness: Length = '3/4"', name = 'board'): Stock {
    return build.stock(name, { width, thickness });
}

let beams = 0;

/** A beam that nothing is wrong with, but for what is said otherwise. */
export function beam(words: ProfileWords = {}): Profile {
    return build.profile(`test-box-${++beams}`, {
        ...words,
        blocking: words.blocking === null ? null : { stock: board('5 1/2"'), ...words.blocking },
        sides: { stock: board('7 1/4"'), ...words.sides },
        bottom: { stock: board('5 1/2"'), ...words.bottom },
    });
}

export function beamFindings(words: ProfileWords, job?: JobSettings): Finding[] {
    return findingsOf({ job, profiles: [beam(words)] });
}

/** Three coffers of 48" by two of 54", with the beam above: 7" wide. */
export function room(words: RoomWords = {}): Room {
    return build.room('test-room', {
        width: words.width ?? `13' 2"`, length: words.length ?? `9' 7"`, north: { coffers: 3 }, east: { coffers: 2 }, through: 'north-south', beams: beam(), ...words,
    });
}

export function roomFindings(words: RoomWords): Finding[] {
    return findingsOf({ job: words.job, rooms: [room(words)] });
}

export function named(findings: readonly Finding[], rule: string): Finding[] {
    return findings.filter(finding => finding.rule === rule);
}
