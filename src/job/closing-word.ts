/** How a bottom gets in that the biscuits at its ends keep from going straight up, in the words of the text. */
export type ClosingWord = 'slots-opened' | 'biscuits-left-out' | 'swung' | 'sprung' | 'kneed' | 'kerfed';
