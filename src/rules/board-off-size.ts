import { PASSES } from '../cutting/at-bench.ts';
import { FLUSHNESS } from '../data/gaps.ts';
import { citation } from '../data/published.ts';
import { boardsAtBench, type BoardAtBench } from '../measure/bench.ts';
import { piecesWords, recutWords, spoilsWords } from '../measure/bench-words.ts';
import type { JobSettings } from '../job/model.ts';
import type { Given } from '../provenance/source.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { capitalized } from '../plain/words.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { wordsOf } from './support/places.ts';
import { sizesOf } from './support/words.ts';

const wrong = changed(HALL, '    through        north-south\n  }\n', `    through        north-south
  }

  measured {
    board b1 poplar-1x6 { width 5 3/8"; length 10'; into side-A-1-north }
  }
`);

export const boardOffSize = defineRule({
    name: 'board-off-size',
    severity: 'warning',
    title: 'A measured board is off its size: what it is spoiled for, and where it may still go',
    explanation: `
Boards of one stock are not all alike: one is dressed a hair narrow, one thin, one has a split that leaves 10'. A board that is measured
at the bench (\`board b1 poplar-1x6 { width 5 3/8" }\`) is held against every piece of its stock. It will not do for what is as wide as
the stock, or ripped wider than it is; for what is seen or mitered where it is over 1/64" thicker or thinner; for what is longer than it
is.

A board of 5 3/8" is 1/8" too narrow for sides of 5 1/2": their lower edges would hang 1/8" higher than those beside them. It may still
be ripped for cleats. Where \`into\` names pieces that were cut from it already it is an **error**: they are cut again, from what is left
of other boards where that is long enough. What it does no harm for is told, so that it is used there.`,
    wrong,
    right: changed(wrong, '5 3/8"', '5 1/2"'),
    basis: `1/64" is less of a step between faces than the 0.025" that Custom work may have: ${citation(FLUSHNESS)}. 1/32" for what nobody sees: common practice, no source.`,
    check: {
        room({ layout, job, pieces }, report) {
            if (layout.room.measuredBoards.length === 0) return;
            for (const bench of boardsAtBench(layout.room, pieces(), job)) {
                const { spoils, recut } = bench, words = causeOf(bench);
                if (!words || spoils.size === 0) continue;
                report({ ...wordsOf(words), ...recut.length > 0 && { severity: 'error' as const }, message: messageOf(bench, job) });
            }
        },
    },
});

/** The figure that is off; of one that is as it should be its length. A groove alone is told by the rule of the bit. */
function causeOf({ board: { width, thickness, length }, off, spoils }: BoardAtBench): Given<Ticks> | undefined {
    const whys = new Set(spoils.keys());
    if (off.width !== undefined && whys.has('too-narrow')) return width;
    if (off.thickness !== undefined && (whys.has('too-thin') || whys.has('too-thick'))) return thickness;
    return whys.has('too-short') ? length : undefined;
}

function messageOf(bench: BoardAtBench, job: JobSettings): string {
    const { board: { name, stock, length }, off, mayGo, takes, recut } = bench, size = sizesOf(job);
    const offs = [
        ...off.width === undefined ? [] : [`${size.fine(Math.abs(off.width))} ${off.width < 0 ? 'narrower' : 'wider'}`],
        ...off.thickness === undefined ? [] : [`${size.fine(Math.abs(off.thickness))} ${off.thickness < 0 ? 'thinner' : 'thicker'}`],
    ];
    const is = offs.length > 0 ? `is ${offs.join(' and ')} than ${stock.value.name}` : `is ${size(length!.value)} long`;
    const go = mayGo.length === 0 ? 'It will do for no piece that is still to be cut: send it back, or put it by.' : `It will still do for ${piecesWords(mayGo)}${takes.length > 0 && takes.length < mayGo.length ? `; one behind the other, out of its length come ${piecesWords(takes)}` : ''}.`;
    const thick = (off.thickness ?? 0) > PASSES ? ' Planed to size it is a board like any.' : '';
    return `Board ${name} ${is}: ${spoilsWords(bench)}. ${recut.length > 0 ? `${capitalized(`cut again: ${recutWords(recut, job)}`)}. ` : ''}${go}${thick}`;
}
