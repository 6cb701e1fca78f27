/** What a color is for. Drawings name tones; a theme says which colors they are. */
export type Tone = 'ink' | 'soft' | 'paper' | 'tint' | 'wash' | 'accent';
export type Theme = 'light' | 'dark' | 'print';
type Palette = Readonly<Record<Tone, string>>;

export const TONES: readonly Tone[] = ['ink', 'soft', 'paper', 'tint', 'wash', 'accent'];

/** Text in ink and soft on paper and wash holds a contrast of 4.5 to 1 or better in each (WCAG 2.2, 1.4.3); held by a test. */
export const THEMES: Readonly<Record<Theme, Palette>> = {
    light: { ink: '#16191f', soft: '#596070', paper: '#ffffff', tint: '#dde2e8', wash: '#f0f3f6', accent: '#a3341f' },
    dark: { ink: '#dee2e8', soft: '#9ba4b1', paper: '#1d1f23', tint: '#3a3f47', wash: '#292c32', accent: '#f0907a' },
    print: { ink: '#000000', soft: '#444444', paper: '#ffffff', tint: '#dcdcdc', wash: '#f3f3f3', accent: '#000000' },
};
