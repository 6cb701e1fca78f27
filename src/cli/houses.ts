import type { Finding } from '../findings/finding.ts';
import type { Alternate } from '../job/alternate.ts';
import type { JobSettings } from '../job/model.ts';
import type { Rates } from '../job/rates.ts';
import { isWithin } from '../provenance/source.ts';
import { takeOffOf } from '../pipeline/inspect.ts';
import { planBoards } from '../cutting/first-plan.ts';
import type { BoardPlan } from '../cutting/model.ts';
import type { House, HousePlan, RoomPieces } from '../report/house.ts';
import { counted } from '../report/look.ts';
import type { Checked, Workspace } from './workspace.ts';

/** The rooms of the files, those under one job together, in the order of their files. */
export function housesOf(checked: readonly Checked[], workspace: Workspace): House[] {
    const houses = new Map<string, { job: JobSettings; rooms: RoomPieces[]; rates: Rates; alternates: readonly Alternate[] }>();
    for (const { content, layouts } of checked) {
        const errors = errorsBehind(content.uri, checked, workspace);
        for (const { room, ceiling } of layouts) {
            const key = jobKey(room.job);
            const house = houses.get(key) ?? {
                job: room.job, rooms: [],
                // a house has one set of rates: those that hold where its job is said
                rates: (checked.find(other => other.content.uri === room.job.at?.uri)?.content ?? content).rates,
                alternates: checked.flatMap(other => other.content.alternates.filter(({ rooms: [first] }) => first && jobKey(first.instead.job) === key)),
            };
            houses.set(key, house);
            house.rooms.push({ room, errors, ...(ceiling ? { takeOff: takeOffOf(ceiling) } : {}) });
        }
    }
    return [...houses.values()];
}

/** A plan for each house; what one takes from the boards on hand is gone for the next. */
export function plansOf(houses: readonly House[]): HousePlan[] {
    const before: BoardPlan[] = [];
    return houses.map(house => {
        const plan = planBoards(house.rooms.flatMap(r => r.takeOff?.pieces ?? []), house.job, before);
        before.push(plan);
        return { house, plan };
    });
}

/** True where a list made from these houses may be cut and bought from. */
export function isSound(houses: readonly House[]): boolean {
    return houses.every(house => house.rooms.every(room => room.takeOff !== undefined && room.errors === 0));
}

/**
 * What to say of files with errors that no room is made from: a room may be meant in them that could not be read, and a
 * list without it must not look whole.
 */
export function roomsMaybeLost(checked: readonly Checked[], workspace: Workspace): string[] {
    const used = new Set(checked.filter(c => c.layouts.length > 0).flatMap(({ content: { uri } }) => [uri, ...workspace.madeFrom(uri)]));
    return checked.filter(c => !used.has(c.content.uri)).flatMap(one => {
        const errors = openErrors(one).length;
        return errors === 0 ? [] : [`${workspace.files.nameOf(one.content.uri)}: ${counted(errors, 'error')}. A room that is meant in it is missing here: run \`cofferwright check\`.`];
    });
}

function errorsBehind(uri: string, checked: readonly Checked[], workspace: Workspace): number {
    const behind = new Set([uri, ...workspace.madeFrom(uri)]);
    return checked.filter(c => behind.has(c.content.uri)).flatMap(openErrors).length;
}

/** What is wrong with an alternate is not wrong with the house. */
function openErrors({ content, findings }: Checked): Finding[] {
    return findings.filter(finding => isOpenError(finding) && !content.alternates.some(({ whole }) => isWithin(finding.at, whole)));
}

function isOpenError(finding: Finding): boolean {
    return finding.severity === 'error' && !finding.allowed;
}

function jobKey({ at }: JobSettings): string {
    return at ? `${at.uri}#${at.range.start.line}:${at.range.start.character}` : '';
}
