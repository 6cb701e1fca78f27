import type { Finding, Severity } from '../../findings/finding.ts';
import { githubFindings } from '../../report/findings/github.ts';
import { conciseFindings, humanFindings, summary } from '../../report/findings/human.ts';
import { jsonFindings } from '../../report/findings/json.ts';
import { sarifFindings } from '../../report/findings/sarif.ts';
import type { Printed } from '../../text/fit.ts';
import { EXIT, worst, type ExitCode } from '../exit-code.ts';
import { withCommitFindings } from '../contract-commits.ts';
import { openAsked, type Asked } from '../input.ts';
import type { World } from '../world.ts';
import { PAGES } from '../rule-pages.ts';
import { version } from '../version.ts';
import { keepChecking } from '../watch.ts';
import { findingsOf, type Checked, type Workspace } from '../workspace.ts';
import { counted } from '../../plain/words.ts';

export const CHECK_FORMATS = ['human', 'concise', 'json', 'sarif', 'github'] as const;
export interface CheckOptions extends Asked {
    readonly format: (typeof CHECK_FORMATS)[number];
    /** The least grave finding that makes the exit code 1. */
    readonly failOn: Severity;
    readonly exitZero: boolean;
    readonly watch: boolean;
}

/** Everything that is wrong. */
export async function check(options: CheckOptions, world: World): Promise<ExitCode> {
    const { workspace, code, paths } = await openAsked(options, world);
    const once = async (): Promise<ExitCode> => {
        const checked = await withCommitFindings(await workspace.check({ closely: true }), workspace, world);
        return report(checked, workspace, options, world, code === EXIT.clean);
    };
    const found = await once();
    if (options.watch) return keepChecking({ workspace, paths, world, asked: options, again: once });
    return worst(code, found);
}

function report(checked: readonly Checked[], workspace: Workspace, options: CheckOptions, { terminal }: World, isWhole: boolean): ExitCode {
    const findings = findingsOf(checked);
    terminal.result(printed(findings, checked, workspace, isWhole, options, terminal.paint));
    if (options.format === 'human') {
        const unread = checked.filter(({ content }) => workspace.isUnread(content.uri)).length;
        // of a file that was not read nobody knows whether something is wrong in it
        if (unread < checked.length || findings.length > 0) terminal.say(summary(findings, checked.length - unread));
        if (unread > 0) terminal.say(`${counted(unread, 'file')} could not be read, and ${unread === 1 ? 'was' : 'were'} not checked`);
    }
    if (findings.some(f => f.rule === 'internal-error')) return EXIT.internal;
    return options.exitZero || !findings.some(f => !f.allowed && GRAVITY[f.severity] >= GRAVITY[options.failOn]) ? EXIT.clean : EXIT.findings;
}

function printed(findings: readonly Finding[], checked: readonly Checked[], workspace: Workspace, isWhole: boolean, options: CheckOptions, paint: World['terminal']['paint']): Printed {
    const { files } = workspace, read = checked.filter(({ content }) => !workspace.isUnread(content.uri));
    switch (options.format) {
        case 'human': return humanFindings(findings, files, paint);
        case 'concise': return conciseFindings(findings, files);
        case 'json': return jsonFindings(findings, read.map(c => c.content.uri), files);
        case 'sarif': return sarifFindings(findings, files, { version, rules: PAGES }, isWhole && read.length === checked.length);
        case 'github': return githubFindings(findings, files);
    }
}

const GRAVITY: Record<Severity, number> = { hint: 0, warning: 1, error: 2 };
