import type { PutUpSaid } from '../../job/model.ts';
import type { OrderSaid } from '../../job/put-up.ts';
import type { Given } from '../../provenance/source.ts';
import type { Rational } from '../../quantity/rational.ts';
import type * as ast from '../generated/ast.ts';
import { isBroken } from '../types/broken.ts';
import { wordsOf } from '../types/values.ts';
import { quoted } from '../types/words.ts';
import type { Reading } from './reading.ts';
import { textOf, waitsOf, type RoomsElsewhere } from './waits.ts';

/** What is said of how a room is put up; undefined where nothing is. */
export function readPutUp(room: Reading, home: ast.Room, rooms: RoomsElsewhere): PutUpSaid | undefined {
    const reading = room.inner('put-up'), crews = reading?.wholeNumber('crews');
    if (!reading || !crews) return undefined;
    const firstBay = reading.wholeNumber('first-bay'), glue = minutes(reading), clamped = minutes(reading, 'clamped');
    const fromDay = reading.wholeNumber('from-day');
    return {
        at: reading.place(home).at, crews, orders: ordersOf(reading), waits: waitsOf(reading, home, rooms), up: reading.each('up', textOf),
        ...fromDay && { fromDay }, ...firstBay && { firstBay }, ...glue && { glue }, ...clamped && { clamped },
    };
}

function minutes(reading: Reading, mod?: string): Given<Rational> | undefined {
    const given = reading.amount('glue', mod);
    return given && { ...given, value: given.value.exact };
}

/** A line that says neither before, nor after, nor a day is told, and left out. */
function ordersOf(reading: Reading): OrderSaid[] {
    const property = reading.block.declaration('order'), lines = reading.block.entries.get('order')?.lines.filter(line => !isBroken(line)) ?? [];
    return lines.flatMap((words): OrderSaid[] => {
        const line = property && reading.line(words, property, 'PutUp'), at = wordsOf(words);
        const what = line?.each('value', textOf) ?? [];
        const before = line?.text('before'), after = line?.text('after'), day = line?.wholeNumber('on-day');
        if (words.mods.length === 0) {
            reading.evaluator.raise({ rule: 'value-missing', at, message: `${quoted('order')} needs what comes before or after it, or a day: order band before bottoms, order trim on-day 3.` });
            return [];
        }
        return what.length === 0 ? [] : [{ at, what, ...before && { before }, ...after && { after }, ...day && { day } }];
    });
}
