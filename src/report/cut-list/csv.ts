import { whyText } from '../../provenance/why-text.ts';
import { printLength } from '../../quantity/print-length.ts';
import { decimal, unitOf, type Cell } from '../csv.ts';
import type { House } from '../house.ts';
import type { Files } from '../look.ts';
import { sourceJson } from '../place-json.ts';
import { csvStanding } from '../standing.ts';
import { endText } from './group.ts';
import { stockNames } from '../../job/stock-names.ts';

const HEADER = [
    'id', 'room', 'part', 'line', 'bay', 'coffer', 'on', 'stock', 'unit', 'back', 'face', 'back_text', 'face_text', 'west_or_north_end', 'east_or_south_end',
    'hand', 'width', 'thickness', 'ripped', 'machining', 'where', 'why', 'file', 'source_line', 'source_column',
];

/** A row a piece; `back` and `face` are the cut lengths as numbers in `unit`, beside them as they are read. */
export function csvCutList(houses: readonly Pick<House, 'job' | 'rooms'>[], files: Files): string {
    const nameOf = stockNames(houses.flatMap(({ rooms }) => rooms.flatMap(({ takeOff }) => takeOff?.pieces.map(({ stock }) => stock) ?? [])));
    return csvStanding(HEADER, houses.flatMap(({ job, rooms }) => rooms.map(({ takeOff, standing }) => ({ standing, rows: (takeOff?.pieces ?? []).map((p): Cell[] => {
        const show = job.show.value;
        const source = sourceJson(p.source, files);
        return [
            p.id, p.room, p.part, p.line, p.bay, p.coffer, p.on, nameOf(p.stock), unitOf(show),
            decimal(p.cutBack, show), decimal(p.cutFace, show), printLength(p.cutBack, show), printLength(p.cutFace, show),
            endText(p.ends[0]), endText(p.ends[1]), p.hand, decimal(p.width, show), decimal(p.thickness, show), p.ripped ? 'yes' : 'no',
            p.machining.join('; '), p.where, whyText(p.why, p.cutBack, show), source.file, source.line, source.column,
        ];
    }) }))));
}
