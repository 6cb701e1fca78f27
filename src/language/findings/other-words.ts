const DIRECTIONS: Readonly<Record<string, string>> = {
    'n-s': 'north-south', ns: 'north-south', 's-n': 'north-south', 'south-north': 'north-south',
    'e-w': 'east-west', ew: 'east-west', 'w-e': 'east-west', 'west-east': 'east-west',
};

/**
 * What carpenters call things that have another name here, by the list the word is wanted from: `drywall` where the
 * covering is told, `lf` after `per`.
 */
const OTHERWISE: Readonly<Record<string, Readonly<Record<string, string>>>> = {
    CoveringKind: { drywall: 'gypsum', 'gypsum-board': 'gypsum', 'plaster-board': 'gypsum', plasterboard: 'gypsum', wallboard: 'gypsum', lath: 'plaster', ply: 'plywood', planks: 'boards' },
    Show: {
        mm: 'millimeters', cm: 'millimeters', m: 'millimeters', metric: 'millimeters', millimeter: 'millimeters', millimetres: 'millimeters', meters: 'millimeters',
        in: 'feet-inches', inch: 'feet-inches', inches: 'feet-inches', ft: 'feet-inches', feet: 'feet-inches', imperial: 'feet-inches',
    },
    Running: DIRECTIONS,
    Through: DIRECTIONS,
    Corner: { nw: 'north-west', ne: 'north-east', sw: 'south-west', se: 'south-east', northwest: 'north-west', northeast: 'north-east', southwest: 'south-west', southeast: 'south-east' },
    Corners: { miter: 'mitered', mitre: 'mitered', mitred: 'mitered', butt: 'butted' },
    TrimCorners: { miter: 'mitered', mitre: 'mitered', mitred: 'mitered', cope: 'coped' },
    FixtureKind: {
        chandelier: 'light', pendant: 'light', lamp: 'light', downlight: 'light', sconce: 'light', smoke: 'smoke-alarm', 'smoke-detector': 'smoke-alarm',
        vent: 'register', diffuser: 'register', grille: 'register', hatch: 'access-panel', box: 'junction-box',
    },
    Species: { tulipwood: 'yellow-poplar', fir: 'douglas-fir', cedar: 'western-redcedar' },
    Unit: {
        lf: 'ft', lft: 'ft', 'lin-ft': 'ft', 'linear-ft': 'ft', 'linear-foot': 'ft', foot: 'ft', feet: 'ft', inch: 'in', inches: 'in', meter: 'm', meters: 'm', lm: 'm', millimeter: 'mm', millimeters: 'mm',
        bf: 'board-ft', bdft: 'board-ft', 'bd-ft': 'board-ft', fbm: 'board-ft', 'board-foot': 'board-ft', 'board-feet': 'board-ft',
        sf: 'sq-ft', sqft: 'sq-ft', 'square-foot': 'sq-ft', sqm: 'sq-m', hr: 'h', hrs: 'h', hour: 'h', hours: 'h', minute: 'min', minutes: 'min', days: 'day', joints: 'joint', boards: 'board', coffers: 'coffer',
    },
};

/** What a word of the trade is called in one of the lists; the units after `per` are the list `Unit`. */
export function calledHere(list: string, word: string): string | undefined {
    const words = OTHERWISE[list], known = word.toLowerCase();
    return words && Object.hasOwn(words, known) ? words[known] : undefined;
}
