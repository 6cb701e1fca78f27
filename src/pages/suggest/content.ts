import { drawSmallPlan, toPaneSvg } from '../../drawing/index.ts';
import type { Ceiling } from '../../ceiling/model.ts';
import type { JobSettings } from '../../job/model.ts';
import { layoutOf, takeOffOf } from '../../pipeline/inspect.ts';
import { capitalized } from '../../plain/words.ts';
import {
    CLEAR_OF_WHAT_IS_SAID, costText, HOW_RANKED, hoursOf, movedText, reasonsText, shareText, spreadText, throughText, triedText,
} from '../../report/suggest/words.ts';
import type { Figures, Offer, Suggestions } from '../../suggest/model.ts';
import { suggestionsFor } from '../../suggest/suggestions.ts';
import type { PageContent, RoomOnPage } from '../page.ts';
import { t } from '../shared/words.ts';
import { offerKey } from './offer-key.ts';

export interface SuggestContent extends PageContent {
    /** They are looked for, and not there yet. */
    readonly isLooking: boolean;
    /** Why nothing could be tried; else what was tried, what was in the way, and what is not tried. */
    readonly nothing: string;
    readonly tried: readonly string[];
    readonly notTried: readonly string[];
    readonly present: GridCard | null;
    readonly offers: readonly OfferCard[];
    readonly ranked: string;
    readonly caution: string;
}
export interface GridCard {
    /** `4 by 3`. */
    readonly grid: string;
    readonly sizes: string;
    readonly facts: readonly { readonly what: string; readonly value: string }[];
    /** Its plan: markup that src/drawing made. */
    readonly svg: string;
}
export interface OfferCard extends GridCard {
    readonly key: string;
    readonly says: readonly string[];
    readonly moved: string;
    readonly warnings: readonly string[];
    /** It can be written into the text from here. */
    readonly canBeTaken: boolean;
}

/** Large enough to tell grids apart, in points. */
const PLAN = { width: 280, height: 210, withFixtures: true };

/** The other grids of a room, looked for now where nobody has. */
export function suggestionsOn({ otherGrids, layout: { room }, file, standing }: RoomOnPage): Suggestions | 'looking' {
    return otherGrids ?? suggestionsFor(room, file, standing);
}

export function suggestContent(page: RoomOnPage): SuggestContent {
    const { room } = page.layout, { job } = room, all = suggestionsOn(page);
    const none = { sources: [], nothing: '', tried: [], notTried: [], present: null, offers: [], ranked: HOW_RANKED, caution: CLEAR_OF_WHAT_IS_SAID };
    if (all === 'looking') return { ...none, isLooking: true };
    const { nothing, tried, notTried, present, offers } = all;
    if (nothing !== undefined) return { ...none, isLooking: false, nothing };
    return {
        ...none, isLooking: false, tried: [triedText(all, job), ...reasonsText(tried)], notTried,
        present: present ? cardOf(present, page.ceiling, 'now', job) : null,
        offers: offers.flatMap((offer, i) => offerCard(offer, i, job)),
    };
}

function offerCard(offer: Offer, i: number, job: JobSettings): OfferCard[] {
    const { ceiling } = layoutOf(offer.room);
    return ceiling ? [{
        ...cardOf(offer.figures, ceiling, String(i), job), key: offerKey(offer), says: offer.says, moved: capitalized(movedText(offer, job).join('; ')),
        warnings: offer.warnings.map(({ message }) => message), canBeTaken: offer.changes !== undefined,
    }] : [];
}

function cardOf(figures: Figures, ceiling: Ceiling, id: string, job: JobSettings): GridCard {
    const { across, down, width, length, unequal, offSquare, conflicts, errors, joists, closing, boards } = figures;
    return {
        grid: t('{0} by {1}', across, down), sizes: t('{0} by {1}', spreadText(width, job), spreadText(length, job)),
        facts: [
            { what: t('through'), value: throughText(figures) },
            { what: t('unequal'), value: shareText(unequal) }, { what: t('off square'), value: shareText(offSquare) },
            { what: t('conflicts'), value: String(conflicts) }, ...errors > 0 ? [{ what: t('errors'), value: String(errors) }] : [],
            ...joists === undefined ? [] : [{ what: t('joists found'), value: String(joists) }],
            ...closing === undefined ? [] : [{ what: t('closing pieces'), value: String(closing) }],
            { what: t('boards'), value: String(boards) }, { what: t('they cost'), value: costText(figures) }, { what: t('hours'), value: hoursOf(figures) },
        ],
        svg: toPaneSvg({ ...drawSmallPlan(ceiling, takeOffOf(ceiling), PLAN), id: `grid-${id}` }),
    };
}
