import { titleOf } from '../house.ts';
import { wrap, type Paint } from '../look.ts';
import { cleanText } from '../../text/clean-text.ts';
import { standingNotice, standingOfRooms } from '../standing.ts';
import { closes, faultWords, SHOWS, type RoomFit } from './words.ts';
import type { TerminalText } from '../../text/fit.ts';
import { terminalLines } from '../../text/terminal.ts';
import { isCalm } from '../../plain/notice.ts';
import { counted } from '../../plain/words.ts';

const WIDTH = 100;

/** How the cut lists of the rooms go together, room by room. */
export function humanDryFit(rooms: readonly RoomFit[], paint: Paint): TerminalText {
    const notice = standingNotice(standingOfRooms(rooms));
    const jobs = [...new Set(rooms.map(({ job }) => titleOf(job)))].map(cleanText).join('; ');
    return terminalLines([
        paint.strong(`DRY FIT  ${jobs}`),
        ...notice.flatMap((line, i) => wrap(line, WIDTH - 2).map(part => (i === 0 ? isCalm(notice) ? part : paint.error(part) : `  ${part}`))),
        ...rooms.flatMap(room => ['', ...roomLines(room, paint)]),
        '', ...SHOWS.flatMap(note => wrap(note, WIDTH)).map(paint.faint),
    ]);
}

function roomLines(one: RoomFit, paint: Paint): string[] {
    const { room: { name }, fit, takeOff, standing: { errors }, job } = one;
    if (!fit) return [paint.error(`room ${name}: cannot be laid out, so nothing is put together.`)];
    const { looked: { pieces, pairs, joints, gaps, undersides, coffers, allCoffers }, faults } = fit;
    const all = takeOff && takeOff.leftOut.length > 0 ? `what is not left out (${counted(takeOff.leftOut.length, 'piece')}) goes together` : 'all of it goes together';
    const hints = faults.filter(fault => faultWords(fault, job).severity === 'hint').length;
    const head = closes(one) ? `room ${name}: ${all}${hints > 0 ? `, with ${counted(hints, 'hint')}` : ''}.`
        : `room ${name}: ${counted(faults.length - hints, 'thing')} to fix${hints > 0 ? `, and ${counted(hints, 'hint')}` : ''}.`;
    return [
        closes(one) ? paint.strong(head) : paint.error(head),
        ...wrap(`${counted(pieces, 'piece')}; ${counted(pairs, 'pair')} checked for overlap, ${counted(joints, 'joint')} over the whole of their faces, ${counted(gaps, 'planned gap')}, ${counted(undersides, 'underside')}, ${coffers < allCoffers ? `${coffers} of ${counted(allCoffers, 'coffer')} from face to face (not those that have no four square corners, or no face on some side)` : `${counted(coffers, 'coffer')} from face to face`}.`, WIDTH - 2).map(line => `  ${line}`),
        ...errors.length > 0 ? [paint.error(`  ${counted(errors.length, 'error')} in what it is made from: run \`cofferwright check\` first.`)] : [],
        ...faults.flatMap(fault => {
            const { rule, severity, message } = faultWords(fault, job);
            return ['', `  ${paint[severity](severity)}  ${paint.strong(rule.name)}`, ...wrap(message, WIDTH - 4).map(line => `    ${line}`)];
        }),
    ];
}
