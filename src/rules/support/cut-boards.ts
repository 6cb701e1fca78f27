import { intoTexts } from '../../cutting/cut-line.ts';
import type { Fix } from '../../findings/finding.ts';
import type { CutBoard, CutName, JobSettings } from '../../job/model.ts';
import { printLength } from '../../quantity/print-length.ts';

/** `16' of poplar-1x6`. */
export function boardWords({ length, stock }: CutBoard, job: JobSettings): string {
    return `${printLength(length.value, job.show.value)} of ${stock.value.name}`;
}

/** Writes anew what came out of a board and how it was cut; nothing where that could not be read or cannot be written exactly. */
export function intoFix(
    board: CutBoard, recordFor: (name: CutName) => CutName['asCut'], job: JobSettings, title: string, nameFor = ({ value }: CutName): string => value,
): Fix[] {
    const { intoAt, into } = board;
    if (!intoAt || into.some(({ via, asCut }) => via?.length || asCut === 'unknown')) return [];
    const texts = intoTexts(into.map(name => { const asCut = recordFor(name); return { name: nameFor(name), ...typeof asCut === 'object' && { asCut } }; }), job.show.value);
    return texts === undefined ? [] : [{ title, edits: [{ uri: intoAt.uri, range: intoAt.range, text: texts.join(`\n${' '.repeat(board.length.at.range.start.character)}`) }], preferred: true }];
}
