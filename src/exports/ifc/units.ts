import type { Show } from '../../quantity/print-length.ts';
import { TICKS_PER_INCH, TICKS_PER_MM, type Ticks } from '../../quantity/ticks.ts';
import type { StepText } from './step.ts';

/** Inches or millimeters, as the job shows them; square and cubic meters, radians. */
export interface Units { readonly ticks: number; readonly assignment: string }

export function unitsOf(step: StepText, show: Show): Units {
    const si = (kind: string, prefix: string, name: string) => step.add(`IFCSIUNIT(*,.${kind}.,${prefix},.${name}.)`);
    const length = show === 'millimeters' ? si('LENGTHUNIT', '.MILLI.', 'METRE') : inch(step, si('LENGTHUNIT', '$', 'METRE'));
    const all = [length, si('AREAUNIT', '$', 'SQUARE_METRE'), si('VOLUMEUNIT', '$', 'CUBIC_METRE'), si('PLANEANGLEUNIT', '$', 'RADIAN')];
    return { ticks: show === 'millimeters' ? TICKS_PER_MM : TICKS_PER_INCH, assignment: step.add(`IFCUNITASSIGNMENT((${all.join(',')}))`) };
}

/** 0.0254 m: exactly, by the agreement of 1959. */
function inch(step: StepText, meter: string): string {
    const dimensions = step.add('IFCDIMENSIONALEXPONENTS(1,0,0,0,0,0,0)');
    const factor = step.add(`IFCMEASUREWITHUNIT(IFCLENGTHMEASURE(0.0254),${meter})`);
    return step.add(`IFCCONVERSIONBASEDUNIT(${dimensions},.LENGTHUNIT.,'INCH',${factor})`);
}

const METERS_PER_TICK = 1 / (1000 * TICKS_PER_MM);

function squareMeters(ticksSquared: number): number {
    return ticksSquared * METERS_PER_TICK ** 2;
}
export function cubicMeters(areaTicks: number, height: Ticks): number {
    return squareMeters(areaTicks) * height * METERS_PER_TICK;
}
