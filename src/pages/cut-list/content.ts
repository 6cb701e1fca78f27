import { tapeOf } from '../../job/tape.ts';
import type { JobSettings } from '../../job/model.ts';
import { printInches, printLength, type Show } from '../../quantity/print-length.ts';
import { TICKS_PER_FOOT, type Ticks } from '../../quantity/ticks.ts';
import { cautionsFor } from '../../report/cautions.ts';
import { endsText } from '../../report/cut-list/group.ts';
import { cutWords, howToRead } from '../../report/cut-list/human.ts';
import { fingerprintOf } from '../../takeoff/cut-alike.ts';
import { lowSpacers } from '../../survey/low-spacers.ts';
import { nameInRoom } from '../../takeoff/ids.ts';
import type { Part, Piece } from '../../takeoff/model.ts';
import { toldLengths } from '../../takeoff/ends.ts';
import { comparePieces } from '../../takeoff/piece-order.ts';
import type { PageContent, RoomOnPage } from '../page.ts';
import { Sources } from '../shared/sources.ts';
import { whyWords, type WhyWords } from '../shared/why.ts';
import { stockNames } from '../../job/stock-names.ts';
import { Numbered } from '../../plain/at-key.ts';

/** Pieces are many and alike: what they share is said once, and they name it by its number. */
export interface CutListContent extends PageContent {
    readonly title: string;
    readonly show: Show;
    readonly cutTo: string;
    readonly cuts: readonly Cut[];
    readonly whys: readonly WhyWords[];
    /** By part, line and place. */
    readonly pieces: readonly ListedPiece[];
    readonly howToRead: readonly string[];
    readonly cautions: readonly string[];
}

/** What is done to pieces of one part and one stock. Lengths in ticks. */
export interface Cut {
    /** Fingerprint: see fingerprintOf. */
    readonly print: string;
    readonly part: Part;
    readonly stock: string;
    /** Long points or hidden back: where the stop is set. */
    readonly back: Ticks; readonly length: string;
    /** In inches alone, as on the tape; empty where that is the same. */
    readonly inches: string;
    /** Short points, where they differ. */
    readonly face: Ticks; readonly faceLength: string;
    readonly ends: string;
    readonly hand: 'left' | 'right' | null;
    readonly then: string;
}
export interface ListedPiece {
    readonly id: string;
    /** What is penciled on it. */
    readonly mark: string;
    readonly where: string;
    readonly line: string | null;
    readonly cut: number; readonly why: number;
    /** Of a spacer under a low place of a surveyed ceiling: what it is cut to instead. */
    readonly low?: string;
    /** Number of its place in the text. */
    readonly at: number;
}

/** Pieces that stand in one row. */
export interface Entry { readonly key: string; readonly cut: Cut; readonly pieces: readonly ListedPiece[] }

export function cutListContent(room: RoomOnPage): CutListContent {
    const { layout, ceiling, takeOff } = room, { job } = ceiling.room, show = job.show.value;
    const sources = new Sources(), nameOf = stockNames(takeOff.pieces.map(({ stock }) => stock));
    const low = lowSpacers(ceiling, takeOff), cuts = new Numbered<Cut>(), whys = new Numbered<WhyWords>();
    const pieces = [...takeOff.pieces].sort(comparePieces).map((piece): ListedPiece => {
        const words = whyWords(piece.why, piece.cutBack, tapeOf(job), sources), print = fingerprintOf(piece), lower = low.get(piece.id);
        return {
            id: piece.id, mark: nameInRoom(piece), where: piece.where, line: piece.line, at: sources.number(piece.source),
            cut: cuts.at(print, () => cutOf(piece, print, nameOf(piece.stock), job)), why: whys.at(JSON.stringify(words), () => words),
            ...lower !== undefined && { low: printLength(lower, show) },
        };
    });
    return {
        title: layout.room.title ?? layout.room.name, show, cutTo: printLength(job.cutTo.value, show), cuts: cuts.list, whys: whys.list, pieces,
        howToRead: [...howToRead(takeOff.pieces), ...cutWords([{ room: ceiling.room, takeOff }])], cautions: cautionsFor(takeOff.pieces),
        sources: sources.list,
    };
}

function cutOf(piece: Piece, print: string, stockName: string, { show: { value: show } }: JobSettings): Cut {
    const { part, stock, hand, machining, ripped, width, thickness } = piece;
    const { back: backEdge, face: faceEdge, overall: long } = toldLengths(piece), short = Math.min(faceEdge, backEdge);
    const saysHowToRip = machining.some(words => words.startsWith('rip'));
    const rip = ripped && !saysHowToRip ? [`rip to ${stock.thickness?.value.ticks === thickness ? '' : `${printLength(thickness, show)} x `}${printLength(width, show)}`] : [];
    return {
        print, part, stock: stockName, back: long, length: printLength(long, show), inches: show === 'feet-inches' && long >= TICKS_PER_FOOT ? printInches(long) : '',
        face: short, faceLength: short === long ? '' : printLength(short, show), ends: endsText(piece), hand, then: [...rip, ...machining].join('; '),
    };
}
