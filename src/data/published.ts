/** Where a figure comes from. Every entry of a table carries one, and messages and pages name it. */
export interface Published {
    /** The publication, edition and table. */
    readonly source: string;
    /**
     * How the figure came here: read in that source; read where somebody quotes it; recalled, to be confirmed in the
     * printed source before it is relied on; or usual in the trade without a published source.
     */
    readonly mark: 'read' | 'read second-hand' | 'from memory' | 'common practice, no source';
}

/** As it stands behind a figure: `PS 20, board sizes (read second-hand)`. */
export function citation(p: Published): string {
    return p.mark === 'read' || p.mark === p.source ? p.source : `${p.source} (${p.mark})`;
}
