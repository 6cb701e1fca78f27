import type { Finding } from '../findings/finding.ts';
import type { Source } from '../provenance/source.ts';
import type { Alternate } from './alternate.ts';
import type { Rates } from './rates.ts';
import type { JobSettings, Profile, Room, Stock } from './model.ts';

/** All that one file says, ready for the rest of the program. Made by the language, plain data. */
export interface FileContent {
    readonly uri: string;
    /** The settings that hold in this file: its own `job`, or that of the nearest folder upward. */
    readonly job: JobSettings;
    /** The rates that hold in this file. */
    readonly rates: Rates;
    readonly stocks: readonly Stock[];
    /** Default instance of every profile of this file whose parameters all have defaults. */
    readonly profiles: readonly Profile[];
    readonly rooms: readonly Room[];
    readonly alternates: readonly Alternate[];
    /** What the language itself found: syntax, names, types, things not said or not computed yet. */
    readonly findings: readonly Finding[];
    /** `// allow RULE: reason` comments. Each covers its own line, or the next where it stands alone. */
    readonly allowances: readonly Allowance[];
}
export interface Allowance { readonly rule: string; readonly reason: string; readonly at: Source; readonly line: number }
