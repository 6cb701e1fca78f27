import { cutAlready } from '../../cutting/as-cut.ts';
import { tapeOf } from '../../job/tape.ts';
import type { JobSettings } from '../../job/model.ts';
import { stockNames } from '../../job/stock-names.ts';
import { whyText } from '../../provenance/why-text.ts';
import { roundTo } from '../../quantity/round.ts';
import type { Show } from '../../quantity/print-length.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import { isHanded } from '../../takeoff/cut-alike.ts';
import { endsFromTheLeft, miterAt, signedDegrees } from '../../takeoff/ends.ts';
import type { EndCut, Piece, TakeOff } from '../../takeoff/model.ts';
import { lengthJson, type LengthJson } from '../amounts-json.ts';
import type { House } from '../house.ts';
import type { Files } from '../look.ts';
import { sourceJson } from '../place-json.ts';
import { printJson } from '../../text/json.ts';
import { roomHead } from '../house-json.ts';
import { standingOfRooms } from '../standing.ts';
import { standingJson } from '../standing-json.ts';
import { lowIn } from './low-in-room.ts';
import type { CutListJson, EndJson } from './shape.ts';
import type { JsonText } from '../../text/fit.ts';

/** Every piece of the given rooms. */
export function jsonCutList(houses: readonly Pick<House, 'job' | 'rooms'>[], files: Files): JsonText {
    const rooms = houses.flatMap(house => house.rooms.map(r => ({ ...r, job: house.job })));
    const taken = rooms.flatMap(one => {
        const { room, takeOff, job } = one;
        return takeOff ? [{ takeOff, job, cut: cutAlready(room, takeOff.pieces), low: lowIn([one]) }] : [];
    });
    const nameOf = stockNames(taken.flatMap(({ takeOff }) => takeOff.pieces.map(({ stock }) => stock)));
    return printJson<CutListJson>({
        version: 1,
        kind: 'cofferwright.cut-list',
        standing: standingJson(standingOfRooms(rooms)),
        rooms: rooms.map(one => ({
            ...roomHead(one, one.takeOff !== undefined, one.job, files), cutTo: lengthJson(one.job.cutTo.value, one.job.cutTo.value, one.job.show.value),
        })),
        pieces: taken.flatMap(({ takeOff, job, cut, low }) => takeOff.pieces.map(piece =>
            pieceJson(piece, { stock: nameOf(piece.stock), isCut: cut.has(piece), low: low.get(piece.id) }, job, files))),
        joints: taken.flatMap(({ takeOff }) => takeOff.joints.map(joint => ({ room: takeOff.room, ...joint }))),
        consumables: taken.flatMap(({ takeOff }) => consumablesJson(takeOff)),
    });
}

/** `low`: what a spacer under a low place of the ceiling is cut to. */
interface InHouse { readonly stock: string; readonly isCut: boolean; readonly low: Ticks | undefined }

function pieceJson(p: Piece, { stock, isCut, low }: InHouse, job: JobSettings, files: Files): CutListJson['pieces'][number] {
    const show = job.show.value;
    const length = (ticks: number): LengthJson => lengthJson(ticks, roundTo(ticks, job.cutTo.value), show), [left, right] = endsFromTheLeft(p);
    return {
        id: p.id,
        room: p.room,
        part: p.part,
        line: p.line,
        bay: p.bay,
        coffer: p.coffer,
        on: p.on,
        isCut,
        stock,
        face: lengthJson(p.face, p.cutFace, show),
        back: lengthJson(p.back, p.cutBack, show),
        overall: lengthJson(p.overall, p.cutOverall, show),
        ...p.face !== p.back && longAndShort(p, show),
        ends: [endJson(p.ends[0]), endJson(p.ends[1])],
        left: endJson(left),
        right: endJson(right),
        meets: p.meets,
        hand: miterAt(p),
        handed: p.hand !== null || isHanded(p),
        width: length(p.width),
        thickness: length(p.thickness),
        ...p.scribe !== undefined && { scribe: length(p.scribe) },
        ...low !== undefined && { lowerTo: lengthJson(low, low, show) },
        ripped: p.ripped,
        ...shapeJson(p, length),
        machining: p.machining,
        where: p.where,
        why: whyText(p.why, p.cutBack, tapeOf(job)),
        terms: p.why.terms.map(t => ({ what: t.what, times: t.times, length: length(t.ticks), source: t.at ? sourceJson(t.at, files) : null })),
        source: sourceJson(p.source, files),
    };
}

function shapeJson({ work }: Piece, length: (ticks: number) => LengthJson): Pick<CutListJson['pieces'][number], 'shape'> {
    const shape = work.find(({ kind }) => kind === 'shape');
    return shape?.kind === 'shape' ? { shape: shape.corners.map(([along, across]) => ({ along: length(along), across: length(across) })) } : {};
}

function longAndShort({ face, back, cutFace, cutBack }: Piece, show: Show): Pick<CutListJson['pieces'][number], 'long' | 'short'> {
    const [long, short] = back > face
        ? [lengthJson(back, cutBack, show), lengthJson(face, cutFace, show)]
        : [lengthJson(face, cutFace, show), lengthJson(back, cutBack, show)];
    return { long, short };
}

function endJson(end: EndCut): EndJson {
    const angle = signedDegrees(end), { cut, longer, how, flat } = end;
    return { cut, ...angle !== 0 && { degrees: Math.abs(angle) }, angle, ...longer && { longer }, ...how && { how }, ...flat && { flat } };
}

function consumablesJson({ room, consumables }: TakeOff): CutListJson['consumables'] {
    return consumables.map(({ what, count, unit, by, basis }) => ({ room, what, count, unit, by, basis }));
}
