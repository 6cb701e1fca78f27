import { html, type Html } from '../shared/html.ts';
import { t } from '../shared/words.ts';
import type { Against, NoHistory } from './known.ts';

/** The commit that a house is compared with: its whole hash, the beginning of it, its date, the first line of its message. */
export interface Since { readonly commit: string; readonly short: string; readonly date: string; readonly subject: string; readonly against: Against }

export const noHistory: Readonly<Record<NoHistory, () => string>> = {
    'not-asked': () => t('This editor does not read the history of a folder, so there is no earlier state to compare with.'),
    'no-git': () => t('There is no git here: this editor\'s own git extension is not there, or not allowed in a folder that is not trusted. With it, this pane tells what changed since a commit.'),
    'switched-off': () => t('This editor\'s git is switched off. Where it is on (setting git.enabled), this pane tells what changed since a commit.'),
    'not-saved': () => t('This text has not been saved yet, so there is no earlier state of it.'),
    'no-repository': () => t('This file lies in no git repository that the editor has opened, so there is no earlier state to compare with.'),
    'no-commit': () => t('Nothing has been committed in this repository yet. After the first commit this pane tells what changed since.'),
    'unknown-commit': () => t('There is no such commit here any more.'),
    'not-signed': () => t('No contract in this job names a commit that was signed any more.'),
    'too-many': () => t('There are more job files than are compared at once: open the folder of one house.'),
    fault: () => t('The earlier state could not be read. The output of Cofferwright says why.'),
};

const sinceWhat: Readonly<Record<Against, () => string>> = { last: () => t('Since the last commit:'), signed: () => t('Since what was signed:'), chosen: () => t('Since the commit:') };

/** Which commit, in words. */
export function sinceWords({ against, short, date, subject }: Since): Html {
    return html`${sinceWhat[against]()} <span class="commit">${[short, date].filter(Boolean).join(', ')}</span>${subject ? html` <bdi class="soft">${subject}</bdi>` : ''}`;
}
