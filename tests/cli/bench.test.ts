import { expect, test } from 'vitest';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { BenchJson } from '../../src/report/bench/shape.ts';
import { strictSchema } from '../report/samples.ts';
import { folderWith } from './folder.ts';
import { den, house } from './house.ts';
import { cofferwright } from './world.ts';

const MEASURED = `  measured {
    board b1 pine-1x8 { width 7 1/8"; length 12' }
    board b2 pine-1x8 { width 7 1/4" }
    gauge 0.250", 0.251", 0.252", 0.254", 0.255" meant 1/4" of "groove"
  }

  grid {`;

test('bench: boards beside their stock, gauges with their trend; JSON as its schema says, CSV, a page; a room of which nothing was measured says so', async () => {
    const cwd = folderWith({ ...house, 'den.coffer': den.replace('  grid {', () => MEASURED) }), { out, code } = await cofferwright(cwd, ['bench']);
    expect(out).toMatch(/^AT THE BENCH/);
    expect(out).toMatch(/b1 +pine-1x8 +width 1\/8" under +too narrow for /);
    expect(out).toMatch(/groove +1\/4" .* more a reading +after \d+ more +after \d+ more/);
    // a board that does not do is no mistake of the job
    expect(code).toBe(0);
    const told = JSON.parse((await cofferwright(cwd, ['bench', '--format', 'json'])).out) as BenchJson, valid = strictSchema('bench');
    expect(valid(told), JSON.stringify(valid.errors)).toBe(true);
    const [{ boards: [b1, b2], gauges: [gauge] }] = told.rooms as [BenchJson['rooms'][number]];
    expect([b1!.off.width!.ticks, b1!.spoils[0]!.why, b2!.spoils, gauge!.creeps]).toEqual([-2032, 'too-narrow', [], true]);
    const rows = (await cofferwright(cwd, ['bench', '--format', 'csv'])).out.trim().split('\r\n');
    expect(rows.filter(row => row.startsWith('den,spoiled,b1,')).length).toBe(b1!.spoils.flatMap(({ pieces }) => pieces).length);
    expect((await cofferwright(cwd, ['print', '--page', 'bench', '--out', 'pages'])).code).toBe(0);
    expect(readFileSync(join(cwd, 'pages', 'bench-den.html'), 'utf8')).toContain('will still do for');
    expect((await cofferwright(folderWith(house), ['bench'])).out).toContain('Nothing was measured at the bench for it');
});
