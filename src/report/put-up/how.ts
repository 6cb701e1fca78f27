import type { Ceiling } from '../../ceiling/model.ts';
import { CLAMPED, IN_TIME, OPEN } from '../../data/glue.ts';
import { citation } from '../../data/published.ts';
import type { StepKind } from '../../putup/model.ts';
import { listed } from '../../plain/words.ts';
import type { Rational } from '../../quantity/rational.ts';
import type { Tape } from '../../quantity/print-length.ts';
import { printMark } from '../../quantity/print-length.ts';
import type { Control, StepTold } from './content.ts';

/** How each kind of step is done: common practice, no source, but for the glue's times. Each is told once, however many steps there are of it. */
export interface How { readonly kind: StepKind | 'layout' | 'glue'; readonly words: string }

export function howOf(steps: readonly StepTold[], control: Control | null, { beams, around, room: { putUp: said } }: Ceiling, tape: Tape): How[] {
    const has = (kind: StepKind): boolean => steps.some(({ step }) => step.kind === kind);
    const joints = new Set(steps.flatMap(told => told.joints.map(({ kind }) => kind)));
    const profile = beams?.profile, butted = profile?.sides?.corners?.value === 'butted', gauge = profile?.cleats?.gauge?.value.ticks ?? beams?.bottomThickness?.ticks;
    const how = (kind: How['kind'], ...words: readonly (string | false | undefined)[]): How[] => {
        const said = words.filter(each => typeof each === 'string');
        return said.length > 0 ? [{ kind, words: said.join(' ') }] : [];
    };
    const print = (ticks: number): string => printMark(Math.round(ticks), tape);
    return [
        ...how('layout', 'Mark the centers of all lines on the ceiling from the walls that the layout measures from, and snap both edges of every blocking.',
            control ? `Square them before a screw goes in: the centers of lines ${control.lines[0]} and ${control.lines[1]} are ${print(control.across)} apart, those of ${control.lines[2]} and ${control.lines[3]} ${print(control.down)}, and from crossing to crossing both diagonals measure ${print(control.diagonal)}.` : undefined),
        ...has('blocking') ? how('blocking', 'Lift it to its lines and screw it into the joists, the middle first, checking with a straightedge that it stays on the line. What runs through comes before what goes between.') : [],
        ...has('spacers') ? how('spacers', 'Hang them square under the blocking; a straightedge along them shows one that stands out.') : [],
        ...has('first-bay') ? how('first-bay', 'Put these pieces up dry, with clamps or pins that come out again, and measure. Cut nothing else but blocking and spacers before the text says what was measured; then cut the rest from it.') : [],
        ...has('sides') ? how('sides', `Try the four sides of a coffer dry. ${butted ? 'Glue the butted corners and pin them' : 'Glue both faces of each miter, close the corner from below by hand, and pin it through one side while the next is set'}; fasten into spacers and blocking.`,
            profile?.cleats && gauge !== undefined ? `Then glue and nail the cleats, each set with a gauge block ${print(gauge)} thick at the lower edge.` : undefined, 'Fill the nail holes when the glue is dry.') : [],
        ...has('bottoms') ? how('bottoms', joints.has('butt') && 'Put up each butt joint dry, with its biscuits, and look at it from the floor. Then spread glue in the slots and on the end grain, twice, and draw it together with clamps from beam to beam, or with pinch dogs on the underside; fill the holes that they leave.',
            'Seat a bottom against the cleats with a block and a mallet, and with a clamp across the sides where they stand apart; nail it into the cleats from the middle to the ends.') : [],
        ...has('moldings') ? how('moldings', 'Glue and pin the miters, and pin along the edge; fill.') : [],
        ...has('band') || Object.values(around).some(own => own?.kind === 'band') ? how('band', 'It goes up when the bottoms are in: what they need to get in lies behind it. Nail it into the studs; scarf or butt its splices over one.') : [],
        ...has('trim') ? how('trim', 'Two pieces across from each other first, then the two between, the last one bowed in from its middle.') : [],
        ...joints.size === 0 ? [] : said?.glue ? how('glue', `By what is said of it: the joint closed within ${figure(said.glue.value)} minutes${said.clamped ? `, then ${figure(said.clamped.value)} minutes in clamps` : ''}; no strain for ${CLAMPED.rest} hours (${citation(CLAMPED)}).`) : how('glue', `Yellow carpenter's glue wants the joint closed within about ${OPEN.open} minutes (${citation(OPEN)}), ${listed(CLAMPED.clamped!.map(String), 'or').replace(' or ', ' to ')} minutes in clamps, and no strain for ${CLAMPED.rest} hours (${citation(CLAMPED)}). The sheet of the glue at hand comes first, and cold slows it down. In time is it while a small bead comes out all along the joint when pressure comes on (${citation(IN_TIME)}).`),
    ];
}

function figure(minutes: Rational): string {
    return String(Number(minutes.valueOf().toFixed(1)));
}
