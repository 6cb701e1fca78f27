/**
 * The faces of a subdivision of the plane, by walking its edges: each directed edge has its face on the right, and `next` is
 * the edge that goes on along the same face. Which edges follow one another is known from how they meet, not found from
 * coordinates, so rounding cannot lead astray. Every edge is walked once; an edge without a next one ends the walk, and what
 * leads there is left out and handed back as `open`.
 */
export function walkFaces<Edge>(edges: readonly Edge[], next: (edge: Edge) => Edge | undefined): { readonly loops: Edge[][]; readonly open: Edge[] } {
    const walked = new Set<Edge>();
    const loops: Edge[][] = [], open: Edge[] = [];
    for (const first of edges) {
        if (walked.has(first)) continue;
        const loop: Edge[] = [];
        let at: Edge | undefined = first;
        while (at !== undefined && !walked.has(at)) {
            walked.add(at);
            loop.push(at);
            at = next(at);
        }
        if (at === first) loops.push(loop);
        else open.push(...loop);
    }
    return { loops, open };
}
