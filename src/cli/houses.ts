import type { Finding } from '../findings/finding.ts';
import type { Alternate } from '../job/alternate.ts';
import type { JobSettings } from '../job/model.ts';
import { isWithin } from '../provenance/source.ts';
import { takeOffOf } from '../pipeline/inspect.ts';
import { Boards, type HouseToCut } from '../pipeline/boards.ts';
import { isSound as isWell, standingOf } from '../pipeline/standing.ts';
import { keyOfJob } from '../pages/rooms.ts';
import type { BoardPlan } from '../cutting/model.ts';
import type { Solve } from '../cutting/questions.ts';
import type { House, HousePlan, RoomPieces } from '../report/house.ts';
import type { Checked, Workspace } from './workspace.ts';
import { counted } from '../plain/words.ts';

/** The rooms of the files, those under one job together, in the order of their files. */
export function housesOf(checked: readonly Checked[], workspace: Workspace): House[] {
    const houses = new Map<string, { job: JobSettings; rooms: RoomPieces[]; alternates: readonly Alternate[] }>();
    for (const { content, layouts } of checked) {
        const found = foundBehind(content.uri, checked, workspace);
        const passed = passedBy(checked);
        for (const { room, ceiling } of layouts) {
            const key = keyOfJob(room.job);
            const house = houses.get(key) ?? {
                job: room.job, rooms: [],
                alternates: checked.flatMap(other => other.content.alternates.filter(({ rooms: [first] }) => first && keyOfJob(first.instead.job) === key)),
            };
            houses.set(key, house);
            house.rooms.push({ room, standing: standingOf(room, found, passed, workspace.files.nameOf), ...(ceiling ? { takeOff: takeOffOf(ceiling) } : {}) });
        }
    }
    return [...houses.values()];
}

/**
 * A plan for each house; what one takes from the boards on hand is gone for the next, as is all that was cut already.
 * @param all every house that was asked for, where these are only some rooms of them
 */
export async function planHouses(houses: readonly House[], all: readonly House[], solve: Solve): Promise<HousePlan[]> {
    const boards = new Boards(all.map(houseToCut));
    const before: BoardPlan[] = [];
    const plans: HousePlan[] = [];
    for (const house of houses) {
        const { questions, whole } = boards.of(houseToCut(house), before);
        const [plan] = await solve(questions);
        before.push(plan);
        plans.push({ house, plan: whole(plan) });
    }
    return plans;
}

export function houseToCut({ job, rooms }: House): HouseToCut {
    return { job, rooms: rooms.map(({ room, takeOff }) => ({ room, pieces: takeOff?.pieces ?? [] })) };
}

/** True where a list made from these houses may be cut and bought from. */
export function isSound(houses: readonly House[]): boolean {
    return houses.every(house => house.rooms.every(room => room.takeOff !== undefined && isWell(room.standing)));
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

/** Everything found in a file and in what it is made from. */
export function foundBehind(uri: string, checked: readonly Checked[], workspace: Workspace): Finding[] {
    const behind = new Set([uri, ...workspace.madeFrom(uri)]);
    return checked.filter(c => behind.has(c.content.uri)).flatMap(({ findings }) => findings);
}

/** What is wrong with an alternate is not wrong with the house. */
export function passedBy(checked: readonly Checked[]): (finding: Finding) => boolean {
    const alternates = checked.flatMap(({ content }) => content.alternates);
    return ({ at }) => alternates.some(({ whole }) => isWithin(at, whole));
}

function openErrors({ content, findings }: Checked): Finding[] {
    return findings.filter(({ severity, allowed, at }) => severity === 'error' && !allowed && !content.alternates.some(({ whole }) => isWithin(at, whole)));
}
