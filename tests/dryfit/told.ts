import type { Fault } from '../../src/dryfit/model.ts';

/** A fault on one line, for the message of a test that fails. */
export function told(fault: Fault): string {
    switch (fault.kind) {
        case 'misfit': {
            const clashes = fault.clashes.map(({ kind, other, ticks, touches, wanted }) => `${kind} ${ticks} ${typeof other === 'string' ? other : other.id}${wanted === undefined ? '' : ` ${touches} of ${wanted}`}`);
            return `${fault.piece.id} ${JSON.stringify(fault.causes)}: ${clashes.slice(0, 4).join('; ')} (${clashes.length}), ${fault.alike.length} alike`;
        }
        case 'underside': return `${fault.piece.id} is ${fault.ticks} above the underside, ${fault.alike.length} alike`;
        case 'coffer': return `coffer ${fault.coffer} opens ${fault.is} of ${fault.wanted} ${fault.along}${fault.planned ? ', planned' : ''}`;
        default: return `${fault.id} is ${fault.kind}, ${fault.count}, ${fault.alike.length} alike`;
    }
}
