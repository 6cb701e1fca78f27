import type { Part } from '../../takeoff/model.ts';
import type { Theme } from '../themes.ts';

/** Calm woods, one a part, that can be told apart; on paper they are the grays that a printer makes of them. */
export const WOODS: Readonly<Record<Theme, Readonly<Record<Part, string>>>> = {
    light: { panel: '#e3d3b4', blocking: '#b08e5f', spacer: '#9aa28a', side: '#dcc49a', cleat: '#c49d63', bottom: '#e8d6b2', timber: '#d9b98a', molding: '#d5bd92', band: '#cfb389', trim: '#f1e6cb' },
    dark: { panel: '#c6b38d', blocking: '#8d7048', spacer: '#7d8571', side: '#bfa477', cleat: '#a8834d', bottom: '#cfb98f', timber: '#b8935f', molding: '#b89c6c', band: '#ad9168', trim: '#dccfae' },
    print: { panel: '#e6e6e6', blocking: '#9a9a9a', spacer: '#a8a8a8', side: '#d8d8d8', cleat: '#bdbdbd', bottom: '#ececec', timber: '#d0d0d0', molding: '#c6c6c6', band: '#cdcdcd', trim: '#f4f4f4' },
};
