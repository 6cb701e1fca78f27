import type { Part } from '../../takeoff/model.ts';
import { t } from '../shared/words.ts';

/** A part's name as a heading and in a row. */
export function partWord(part: Part): string {
    switch (part) {
        case 'panel': return t('Panel');
        case 'blocking': return t('Blocking');
        case 'spacer': return t('Spacer');
        case 'side': return t('Side');
        case 'cleat': return t('Cleat');
        case 'bottom': return t('Bottom');
        case 'timber': return t('Timber');
        case 'molding': return t('Molding');
        case 'band': return t('Band');
        case 'trim': return t('Trim');
    }
}
