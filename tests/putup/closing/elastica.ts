/**
 * A slender beam of large bows, by shooting: nothing of the formulas in src/putup/closing/bending.ts is in it but Euler and Bernoulli's law,
 * curvature = moment / E I. The beam lies on two supports that push square to the chord and let it slide and turn, and is loaded in its middle.
 * From one end inwards by Runge and Kutta's method of the fourth order along the arc: x' = cos a, y' = sin a, a' = -(F / 2) x / E I. The force is
 * found by halving so that the middle is level, then the angle of the end so that the chord is as much shorter as is asked.
 */
interface Elastica { readonly bow: number; readonly endAngle: number; readonly force: number; readonly curvature: number; readonly shorter: number }

/** `stiffness`: E I. All in one system of units; angles in radians. */
export function elastica(length: number, stiffness: number, shorter: number): Elastica {
    return halving(0, 1.2, angle => shape(length, stiffness, angle), ({ shorter: got }) => got > shorter);
}

/** The same beam pressed at its ends along the chord by the force, and not loaded in its middle: a' = -F y / E I. */
export function pressedElastica(length: number, stiffness: number, shorter: number): Elastica {
    const pressed = (angle: number): Elastica =>
        halving(0, 100 * stiffness / length ** 2, force => half(length, stiffness, angle, force, ([, y]) => force * y), ({ level }) => level < 0);
    return halving(0, 1.2, pressed, ({ shorter: got }) => got > shorter);
}

function shape(length: number, stiffness: number, endAngle: number): Elastica {
    return halving(0, 100 * stiffness / length ** 2, force => half(length, stiffness, endAngle, force), ({ level }) => level < 0);
}

type State = readonly [x: number, y: number, a: number];
/** `moment`: what bends it at a place of half of it. */
function half(
    length: number, stiffness: number, endAngle: number, force: number, moment: (at: State) => number = ([x]) => force / 2 * x,
): Elastica & { readonly level: number } {
    const steps = 200, h = length / 2 / steps;
    const slope = (at: State): State => [Math.cos(at[2]), Math.sin(at[2]), -moment(at) / stiffness];
    const plus = (s: State, d: State, by: number): State => [s[0] + by * d[0], s[1] + by * d[1], s[2] + by * d[2]];
    let at: State = [0, 0, endAngle];
    for (let i = 0; i < steps; i++) {
        const k1 = slope(at), k2 = slope(plus(at, k1, h / 2)), k3 = slope(plus(at, k2, h / 2)), k4 = slope(plus(at, k3, h));
        at = plus(plus(plus(plus(at, k1, h / 6), k2, h / 3), k3, h / 3), k4, h / 6);
    }
    const [x, y, level] = at;
    return { bow: y, endAngle, force, curvature: moment(at) / stiffness, shorter: length - 2 * x, level };
}

function halving<T>(low: number, high: number, make: (at: number) => T, tooMuch: (made: T) => boolean): T {
    let [a, b] = [low, high];
    for (let i = 0; i < 60; i++) { const middle = (a + b) / 2; if (tooMuch(make(middle))) b = middle; else a = middle; }
    return make((a + b) / 2);
}
