import { readdirSync, readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { drawView } from '../../src/drawing/index.ts';
import { KINDS_FOLDER } from '../../src/build/kinds.ts';
import { dryFitOf } from '../../src/pipeline/inspect-closely.ts';
import { readFile } from '../../src/language/read-file.ts';
import { inspect } from '../../src/pipeline/inspect.ts';
import { FULL } from '../support/full.ts';
import { TestWorkspace } from '../support/workspace.ts';
import { wrongSpots } from './support/rays.ts';

/** Rays shot each way. */
const ACROSS = FULL ? 80 : 24;
const files = readdirSync(KINDS_FOLDER).filter(name => name.endsWith('.coffer')), kinds = files.filter(name => name !== 'details.coffer');
let workspace: TestWorkspace;
beforeAll(async () => { workspace = await TestWorkspace.open(Object.fromEntries(files.map(name => [name, readFileSync(`${KINDS_FOLDER}/${name}`, 'utf8')]))); });

describe('a ceiling of each kind, seen from the floor', () => {
    // half beams round the walls and bottoms that run through hide each other in a circle: no order will do until one is cut
    test.each(kinds)('%s: what is painted last at a spot is what a ray from the eye meets first', name => {
        for (const { ceiling } of inspect(readFile(workspace.document(name))).layouts) {
            const { solids } = dryFitOf(ceiling!), { looked, wrong } = wrongSpots(drawView(ceiling!, solids), ceiling!, solids, ACROSS);
            expect(wrong).toEqual([]);
            expect(looked).toBeGreaterThan(ACROSS ** 2 / 45);
        }
    });
});
