import type { Show } from '../quantity/print-length.ts';

export const POINTS_PER_INCH = 72;
const POINTS_PER_MM = POINTS_PER_INCH / 25.4;

/** A sheet of paper; the large ones lie on their side. */
export interface Paper {
    readonly name: PaperName | 'pane';
    /** In points. */
    readonly width: number; readonly height: number;
    /** As a style sheet says it, so that a browser prints it at its true size. */
    readonly cssWidth: string; readonly cssHeight: string;
    readonly label: string;
}
export type PaperName = '17x11' | 'A3' | 'letter' | 'A4';

/** Ledger (ANSI/ASME Y14.1, size B) and A3 (ISO 216): the largest that a small office's printer takes. */
export const PAPERS: Readonly<Record<PaperName, Paper>> = {
    '17x11': { name: '17x11', width: 17 * POINTS_PER_INCH, height: 11 * POINTS_PER_INCH, cssWidth: '17in', cssHeight: '11in', label: '17" × 11"' },
    A3: { name: 'A3', width: 420 * POINTS_PER_MM, height: 297 * POINTS_PER_MM, cssWidth: '420mm', cssHeight: '297mm', label: 'A3' },
    // upright, for labels
    letter: { name: 'letter', width: 8.5 * POINTS_PER_INCH, height: 11 * POINTS_PER_INCH, cssWidth: '8.5in', cssHeight: '11in', label: '8 1⁄2" × 11"' },
    A4: { name: 'A4', width: 210 * POINTS_PER_MM, height: 297 * POINTS_PER_MM, cssWidth: '210mm', cssHeight: '297mm', label: 'A4' },
};

/** Ground for a drawing in a pane, as large as the pane, in points. */
export function paneGround(width: number, height: number): Paper {
    return { name: 'pane', width, height, cssWidth: '100%', cssHeight: '100%', label: '' };
}

export function paperFor(show: Show): Paper {
    return show === 'millimeters' ? PAPERS.A3 : PAPERS['17x11'];
}
