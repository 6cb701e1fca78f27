import { is, type Change, type Trial } from './trial.ts';

/** A room that says how it is put up. */
function puttingUp(words: string): Change {
    return ['  ceiling {', `  put-up { ${words} }\n  ceiling {`];
}

export const PUT_UP_TRIALS: Readonly<Record<string, Trial>> = {
    'Room.put-up': is('put-up { first-bay 2 }', 'put-up { first-bay 3 }', puttingUp('first-bay 2')),
    'PutUp.first-bay': is('first-bay 2 }', 'first-bay 3 }', puttingUp('first-bay 2')),
    'PutUp.order': is('order trim before', 'order sides before', puttingUp('order trim before bottoms')),
    'PutUp.order/before': is('before band }', 'before bottoms }', puttingUp('order trim before band')),
    'PutUp.order/after': is('after band }', 'after sides }', puttingUp('order bottoms after band')),
    'PutUp.order/on-day': is('on-day 40 }', 'on-day 60 }', puttingUp('order trim on-day 40')),
    'PutUp.after-room': is('after-room shed ', 'after-room stair ', puttingUp('after-room shed before trim')),
    'PutUp.after-room/before': is('before trim }', 'before bottoms }', puttingUp('after-room den before trim')),
    'PutUp.after-trade': is('"painter"', '"plasterer"', puttingUp('after-trade "painter" until-day 30 before trim')),
    'PutUp.after-trade/until-day': is('until-day 30', 'until-day 40', puttingUp('after-trade "painter" until-day 30 before trim')),
    'PutUp.after-trade/before': is('before trim }', 'before bottoms }', puttingUp('after-trade "painter" until-day 30 before trim')),
    'PutUp.from-day': is('from-day 2 }', 'from-day 3 }', puttingUp('from-day 2')),
    'PutUp.up': is('up sides }', 'up bottoms }', puttingUp('up sides')),
    'PutUp.crews': is('crews 2 }', 'crews 1 }', puttingUp('crews 2')),
    'PutUp.glue': is('glue 5 min }', 'glue 8 min }', puttingUp('glue 5 min')),
    'PutUp.glue/clamped': is('clamped 30 min }', 'clamped 45 min }', puttingUp('glue 5 min clamped 30 min')),
};
