import { Color } from 'three';
import { WOODS } from '../../drawing/view/woods.ts';
import type { Comes } from '../../pages/view/state.ts';
import type { Part } from '../../takeoff/model.ts';

/** What the picture is painted with, by the editor's theme. */
export interface Palette {
    readonly parts: Readonly<Record<Part, Color>>;
    readonly paper: Color; readonly edge: Color; readonly ceiling: Color; readonly wall: Color;
    readonly lit: Color; readonly wrong: Color; readonly cut: Color;
    /** What has come since a commit, and what stood there. */
    readonly comes: Readonly<Record<Comes, Color>>; readonly left: Color;
    readonly edgeOpacity: number;
    /** Wood is shaded and grained; in high contrast it is flat, and its edges alone tell the form. */
    readonly flat: boolean;
}

/** Read from the page as it is: the theme's variables, and the class that the editor gives the body. */
export function paletteOf(page: HTMLElement): Palette {
    const { classList } = document.body;
    const seen = reader(page);
    const paper = seen('--paper'), ink = seen('--ink'), lit = seen('--lit'), wrong = seen('--accent');
    const comes = { 'new': seen('--come-new'), from: seen('--come-from'), elsewhere: seen('--come-elsewhere') }, left = ink;
    const flat = classList.contains('vscode-high-contrast') || classList.contains('vscode-high-contrast-light');
    const dark = brightness(paper) < 0.4;
    const woods = dark ? WOODS.dark : WOODS.light;
    const parts = Object.fromEntries(Object.entries(woods).map(([part, color]) => [part, flat ? paper : new Color(color)])) as Record<Part, Color>;
    if (flat) return { parts, paper, edge: ink, ceiling: paper, wall: paper, lit, wrong, comes, left, cut: ink.clone().lerp(paper, 0.6), edgeOpacity: 1, flat };
    return {
        parts, paper, edge: new Color(dark ? '#20170c' : '#5a4526'), ceiling: new Color(dark ? '#5b5b5a' : '#fbf9f4'), wall: new Color(dark ? '#4b4d50' : '#efece5'),
        lit, wrong, comes, left, cut: new Color(dark ? '#6e5330' : '#a37c48'), edgeOpacity: dark ? 0.75 : 0.6, flat,
    };
}

/** The browser knows what a variable comes to; it is asked by way of an element that nobody sees. */
function reader(page: HTMLElement): (name: string) => Color {
    const probe = document.createElement('span');
    probe.hidden = true;
    page.append(probe);
    const { style } = probe;
    const read = (name: string): Color => {
        style.color = `var(${name})`;
        return colorOf(getComputedStyle(probe).color);
    };
    // an element that is gone answers nothing: it goes when the page has been read
    queueMicrotask(() => probe.remove());
    return read;
}

/** `rgb(1, 2, 3)`, or `color(srgb 0.1 0.2 0.3)` where colors were mixed. */
function colorOf(words: string): Color {
    const [red = 0, green = 0, blue = 0] = [...words.replace(/^color\(srgb/, '').matchAll(/[\d.]+/g)].map(Number);
    const whole = words.startsWith('color(') ? 1 : 255;
    return new Color().setRGB(red / whole, green / whole, blue / whole, 'srgb');
}

function brightness(color: Color): number {
    const { r, g, b } = color;
    return Math.sqrt(0.2126 * r + 0.7152 * g + 0.0722 * b);
}
