// Other grids for a room: the example's dining room, a hall full of lights, and one of 40 coffers. Milliseconds of the processor.
import { readFile } from '../../src/language/read-file.ts';
import { SOUND } from '../../src/pipeline/standing.ts';
import { suggestionsFor } from '../../src/suggest/suggestions.ts';
import { hallOf } from './hall.ts';
import { median } from './spread.ts';
import { Workbench } from './workbench.ts';

const LIGHTS = Array.from({ length: 24 }, (_, i) => `  fixture can-${i} light at ${3 + 5 * (i % 6)}' 1", ${2 + 5 * Math.floor(i / 6)}' 7" diameter 5"\n`).join('');
const HALLS: Readonly<Record<string, string>> = {
    '12 coffers': hallOf(4, 3, 22), '12 coffers, 24 lights': hallOf(6, 5).replace('  grid {', `${LIGHTS}  grid {`), '40 coffers': hallOf(8, 5),
    '12 coffers, joists': hallOf(4, 3, 22).replace('  grid {', `  ceiling { height 9'; covering gypsum thickness 5/8"; joists 2x10 every 16" running north-south first-center 9" from west }\n  grid {`),
};

export default async function measure(): Promise<Record<string, number>> {
    const figures: Record<string, number> = {}, bench = new Workbench();
    await bench.open(Object.entries(HALLS).map(([name, text]) => ({ path: `/house/${name.replaceAll(/\W+/g, '-')}.coffer`, text })));
    for (const name of Object.keys(HALLS)) {
        const path = `/house/${name.replaceAll(/\W+/g, '-')}.coffer`, times: number[] = [];
        for (let i = 0; i < 7; i++) {
            await bench.edit(path, HALLS[name]!.replace('"Hall"', `"Hall ${i}"`));
            const file = readFile(bench.document(path)), began = process.cpuUsage();
            const { tried, offers } = suggestionsFor(file.rooms[0]!, file, SOUND), { user, system } = process.cpuUsage(began);
            times.push((user + system) / 1000);
            if (i > 0) continue;
            Object.assign(figures, {
                [`${name}: grids`]: tried.grids, [`${name}: clear`]: tried.clear, [`${name}: looked at whole`]: tried.lookedAt,
                [`${name}: offered`]: offers.length, [`${name}: first`]: times[0],
            });
        }
        figures[`${name}: median`] = median(times.slice(1));
    }
    return figures;
}
