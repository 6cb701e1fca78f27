import type { Ceiling, WholeSection } from '../../ceiling/model.ts';
import { CLAMPED, IN_TIME, OPEN } from '../../data/glue.ts';
import { citation } from '../../data/published.ts';
import type { Control } from '../../putup/control.ts';
import type { PutUp, StepKind } from '../../putup/model.ts';
import { listed } from '../../plain/words.ts';
import type { Rational } from '../../quantity/rational.ts';
import { printMark, type Tape } from '../../quantity/print-length.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import type { RoomPutUp, StepTold } from './content.ts';

/** How each kind of step is done: common practice, no source, but for the glue's times. Each is told once, however many steps there are of it. */
export interface How { readonly kind: StepKind | 'layout' | 'glue'; readonly words: string }

type Sentences = readonly (string | false | undefined)[];

/** In the order in which it is done; glue at last. */
export function howOf({ steps, control, putUp }: Pick<RoomPutUp, 'steps' | 'control' | 'putUp'>, ceiling: Ceiling, tape: Tape): How[] {
    const kinds = new Set(steps.map(({ step }) => step.kind)), hasBand = kinds.has('band') || Object.values(ceiling.around).some(own => own?.kind === 'band');
    const beams = sectionsIn(ceiling), sentences: readonly (readonly [How['kind'], Sentences])[] = [
        ['layout', layoutWords(control, tape)],
        ...STEADY.filter(([kind]) => kinds.has(kind)),
        ...kinds.has('sides') ? [['sides', sidesWords(ceiling, tape)] as const] : [],
        ...kinds.has('bottoms') ? [['bottoms', bottomsWords(beams, steps)] as const] : [],
        ...kinds.has('moldings') ? [['moldings', ['Glue and pin the miters, and pin along the edge; fill.']] as const] : [],
        ...hasBand ? [['band', bandWords(putUp)] as const] : [],
        ...kinds.has('trim') ? [['trim', ['Two pieces across from each other first, then the two between, the last one bowed in from its middle.']] as const] : [],
        ...steps.some(({ joints }) => joints.length > 0) ? [['glue', [glueWords(ceiling)]] as const] : [],
    ];
    return sentences.map(([kind, words]) => ({ kind, words: words.filter(each => typeof each === 'string').join(' ') })).filter(({ words }) => words !== '');
}

/** What is done alike whatever the beams are. */
const STEADY: readonly (readonly [StepKind, Sentences])[] = [
    ['panel', ['Hold it up with a second pair of hands or a lift until it is fastened into the joists, its seams where beams cover them.']],
    ['blocking', ['Lift it to its lines and screw it into the joists, the middle first, checking with a straightedge that it stays on the line. Where there is room at the ends, what goes between may come before what runs through.']],
    ['spacers', ['Hang them square under the blocking; a straightedge along them shows one that stands out.']],
    ['first-bay', ['Put these pieces up dry, with clamps or pins that come out again, and measure. Cut nothing else but blocking and spacers before the text says what was measured; then cut the rest from it.']],
];

/** Of all beams of the room, those along its walls too, each kind once. */
function sectionsIn({ lines, around }: Ceiling): WholeSection[] {
    return [...new Set([...lines.map(({ section }) => section), ...Object.values(around).flatMap(own => (own?.kind === 'half-beam' ? [own.section] : []))])];
}

function layoutWords(control: Control | null, tape: Tape): Sentences {
    const print = (ticks: number): string => printMark(Math.round(ticks), tape), marks = 'Mark the centers of all lines on the ceiling from the walls that the layout measures from, and snap both edges of every blocking.';
    if (!control) return [marks];
    if (control.kind === 'three') {
        const { lines: [one, other], legs, between } = control;
        return [marks, `Square them before a screw goes in: from where lines ${one} and ${other} cross mark ${print(legs[0])} along ${one} and ${print(legs[1])} along ${other}; between the two marks are ${print(between)}.`];
    }
    const { lines: [west, east, north, south], falling, rising } = control, same = (a: Ticks, b: Ticks): boolean => print(a) === print(b);
    const apart = (one: string, other: string, at: readonly [string, string], lengths: readonly [Ticks, Ticks]): string =>
        `${one} and ${other} are ${print(lengths[0])} apart${same(...lengths) ? '' : ` on line ${at[0]} and ${print(lengths[1])} on line ${at[1]}`}`;
    const diagonals = same(falling, rising) ? `from crossing to crossing both diagonals measure ${print(falling)}`
        : `from where ${west} crosses ${north} to where ${east} crosses ${south} are ${print(falling)}, from where ${west} crosses ${south} to where ${east} crosses ${north} ${print(rising)}`;
    return [marks, `Square them before a screw goes in: the centers of lines ${apart(west, east, [north, south], [control.north, control.south])}, those of ${apart(north, south, [west, east], [control.west, control.east])}, and ${diagonals}.`];
}

function sidesWords(ceiling: Ceiling, tape: Tape): Sentences {
    const beams = sectionsIn(ceiling), hasWallCleats = Object.values(ceiling.around).some(own => own?.kind === 'half-beam' && own.section.profile.cleats);
    const corners = new Set(beams.map(({ profile }) => profile.sides?.corners.value)), cleated = beams.filter(({ profile }) => profile.cleats);
    const gauges = [...new Set(cleated.flatMap(({ profile, bottomThickness }) => profile.cleats!.gauge?.value.ticks ?? bottomThickness.ticks))]
        .sort((a, b) => a - b);
    return [
        'Try the four sides of a coffer dry.',
        corners.has('mitered') && 'Glue both faces of each miter, close the corner from below by hand, and pin it through one side while the next is set.',
        corners.has('butted') && 'Glue the butted corners and pin them.',
        'Fasten into spacers and blocking.',
        gauges.length > 0 && `Then glue and nail the cleats, each set with a gauge block ${listed(gauges.map(gauge => printMark(gauge, tape)), 'or')} thick at the lower edge.`,
        hasWallCleats && 'Of a half beam the cleat on the wall hangs level with the one inside its side: carry it over with a level, and screw it into the studs.',
        'Fill the nail holes when the glue is dry.',
    ];
}

function bottomsWords(beams: readonly WholeSection[], steps: readonly StepTold[]): Sentences {
    const boxed = beams.filter(({ profile }) => !profile.solid), places = new Set(boxed.map(({ profile }) => profile.bottom?.place.value));
    return [
        steps.some(({ joints }) => joints.some(({ kind }) => kind === 'butt'))
            && 'Put up each butt joint dry, with its biscuits, and look at it from the floor. Then spread glue in the slots and on the end grain, twice, and draw it together with clamps from beam to beam, or with pinch dogs on the underside; fill the holes that they leave.',
        places.has('between-sides') && 'Seat a bottom against the cleats with a block and a mallet, and with a clamp across the sides where they stand apart; nail it into the cleats from the middle to the ends.',
        places.has('under-sides') && 'One that lies under the sides: set what it stands out beyond their faces with a block on either side, glue it to their lower edges, and nail up into both, from the middle to the ends.',
        places.has('in-rabbets') && 'One that is let into rabbets: start it in both along its whole length before it is driven home in either; glue it, and nail it up into the sides from the middle to the ends.',
        boxed.some(({ profile }) => profile.blocking?.fit.value === 'bench-box')
            && 'What is made at the bench: put its sides, cleats and bottom together there, dry first, then slip the box up over its blocking in one go and nail through the sides into that. Its pieces stand in the steps of their kinds here, and their ways were tried one by one; that of the box as a whole was not.',
        beams.some(({ profile }) => profile.solid)
            && 'A solid beam: know its weight before it is lifted, and have it carried at both ends until it is fastened as whoever is licensed to says.',
    ];
}

function bandWords({ band }: PutUp): Sentences {
    return [
        band === 'first' ? 'It is up before some of the bottoms: those that end at it have no room behind it.' : 'It goes up when the bottoms are in: what they need to get in lies behind it.',
        'Nail it into the studs; scarf or butt its splices over one.',
    ];
}

function glueWords({ room: { putUp: said } }: Ceiling): string {
    const rest = `no strain for ${CLAMPED.rest} hours (${citation(CLAMPED)})`;
    if (said?.glue) return `By what is said of it: the joint closed within ${figure(said.glue.value)} minutes${said.clamped ? `, then ${figure(said.clamped.value)} minutes in clamps` : ''}; ${rest}.`;
    return `Yellow carpenter's glue wants the joint closed within about ${OPEN.open} minutes (${citation(OPEN)}), ${CLAMPED.clamped!.join(' to ')} minutes in clamps, and ${rest}. The sheet of the glue at hand comes first, and cold slows it down. In time is it while a small bead comes out all along the joint when pressure comes on (${citation(IN_TIME)}).`;
}

function figure(minutes: Rational): string {
    return String(Number(minutes.valueOf().toFixed(1)));
}
