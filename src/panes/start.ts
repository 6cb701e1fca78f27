import { sheetRules } from '../drawing/svg/style-sheet.ts';
import type { PageContent } from '../pages/page.ts';
import type { Html } from '../pages/shared/html.ts';
import type { Shown } from '../pages/shared/shown.ts';
import { PAGE_STYLE, PANE_COLORS } from '../pages/shared/style.ts';
import { setWords, t } from '../pages/shared/words.ts';
import { announce } from './announce.ts';
import { PANE_KINDS, readToPane, versioned, type ContentMessage, type ExportFormat, type ExportMessage, type FromPane, type PaneKind } from './messages.ts';
import { comeBackTo, keepingFocus } from './focus.ts';
import { onceLettersAreThere } from './letters.ts';
import { patch } from './patch.ts';
import { keyOf, pinWords, shell, still } from './shell.ts';
import { keep, keptState, withValue } from './state.ts';
import { SHELL_STYLE } from './style.ts';
import { editor } from './vscode-api.ts';

/** What makes a kind of pane what it is. */
interface PaneScript<Content extends PageContent, State> {
    readonly kind: PaneKind;
    /** What its reader has set, at first. Plain data: it is kept over a reload. */
    readonly state: State;
    render(content: Content, state: State, shown: Shown): Html;
    readonly style: string;
    /** Formats its page can be kept in. */
    readonly formats: readonly ExportFormat[];
    /** Once, before the first content: for events of its own, on the element that stays. */
    begin?(pane: Pane<Content, State>): void;
    /** After every change of what is on the screen. */
    shown?(pane: Pane<Content, State>): void;
    /** A part was picked in another pane: what is needed so that it is on the screen. */
    reveal?(pane: Pane<Content, State>, key: string): void;
    /** What the cursor stands in, or what `also` is pointed at, has changed: for what is no markup and has to be lit up by the script. */
    lit?(pane: Pane<Content, State>, also: ReadonlySet<string>): void;
    /** `data-act="name"`: what a click on it does. */
    readonly acts?: Readonly<Record<string, (element: Element, pane: Pane<Content, State>) => void>>;
    /** A file only the pane can make; undefined: the server makes it. */
    file?(format: ExportFormat, pane: Pane<Content, State>): ExportMessage['file'];
}

/** A pane as its own script sees it. */
export interface Pane<Content extends PageContent = PageContent, State = unknown> {
    /** The element that holds everything and stays. */
    readonly root: HTMLElement;
    readonly content: Content | undefined;
    readonly state: State;
    readonly shown: Shown;
    set(state: State): void;
    /** Draws anew with nothing changed but what the script itself knows, such as which rows are seen. */
    redraw(): void;
    /** Sets the state and keeps it, without drawing anew: for what is on the screen already. */
    remember(state: State): void;
    send(message: FromPane): void;
    announce(words: string): void;
}

/**
 * Runs a kind of pane. Markup speaks to it by data attributes, so that no page needs listeners of its own:
 *
 *     data-at="12"              a click shows place 12 of the content's sources in the text
 *     data-was="3f2a…"         with it: in the text as it was at the commit of this hash
 *     data-key="side-B-3"       a part by its key: lit while the cursor stands in its words
 *     data-keys="k1 k2"         the same for what stands for several parts: lit as soon as one of them is
 *     data-lights="k1 k2"       parts to light up while it is pointed at or has the focus
 *     data-find="plan" data-key a click shows the part in another kind of pane
 *     data-state="layers.sides" a checkbox, field or choice that sets this of the pane's state; on a button with data-value="..."
 *     data-tick="key"           a checkbox that ticks the key off, for good
 *     data-act="name"           a click does the act of that name
 */
export function startPane<Content extends PageContent, State>(script: PaneScript<Content, State>): void {
    new RunningPane(script).begin();
}

class RunningPane<Content extends PageContent, State> implements Pane<Content, State> {
    readonly root = document.createElement('div');
    content: Content | undefined;
    state: State;
    ticks: ReadonlySet<string> = new Set();
    lit: ReadonlySet<string> = new Set();
    private message: ContentMessage | undefined;
    private pinned = false;
    private words = '';
    private picked: string | undefined;
    /** From the beginning, and whenever another room is asked for, until the content comes. */
    private isWorking = true;
    /** Somebody types, and what is shown is from before. */
    private isStill = false;

    constructor(private readonly script: PaneScript<Content, State>) {
        const kept = keptState(script.kind);
        this.state = { ...script.state, ...kept?.own as object | undefined };
        this.pinned = kept?.pinned ?? false;
    }

    get shown(): Shown {
        return { ticks: this.ticks, lit: this.lit };
    }

    begin(): void {
        const data = document.getElementById('translations')?.textContent;
        if (data) setWords(JSON.parse(data) as Record<string, string>);
        addStyle([PANE_COLORS, PAGE_STYLE, SHELL_STYLE, ...sheetRules(), this.script.style].join('\n'));
        document.body.prepend(this.root);
        this.root.id = 'root';
        comeBackTo(this.root);
        this.listen();
        this.script.begin?.(this);
        this.draw();
        new ResizeObserver(() => this.sendSize()).observe(document.body);
        this.send({ type: 'ready' });
    }

    set(state: State): void {
        this.state = state;
        this.draw();
        this.keep();
    }

    redraw(): void {
        this.draw();
    }

    remember(state: State): void {
        this.state = state;
        this.keep();
    }

    send(message: FromPane): void {
        editor.postMessage(versioned(message));
    }

    announce(words: string): void {
        announce(words);
    }

    private sizeSent = '';
    private sizeWaits: ReturnType<typeof setTimeout> | undefined;
    /** Once the size has settled, and in steps: a drawing is laid out anew for it. */
    private sendSize(): void {
        clearTimeout(this.sizeWaits);
        this.sizeWaits = setTimeout(() => {
            const page = document.querySelector('[data-zoom]') ?? document.getElementById('page') ?? document.body;
            const step = (pixels: number) => Math.max(20, Math.floor(pixels / 20) * 20);
            const [width, height] = [step(page.clientWidth), step(page.clientHeight)];
            if (`${width} ${height}` === this.sizeSent) return;
            this.sizeSent = `${width} ${height}`;
            this.send({ type: 'size', width, height });
        }, 60);
    }

    /** What has the envelope of a content and not its parts is of another version too: the pane says so, and waits for the next. */
    private draw(): void {
        try {
            this.drawn();
        } catch (error) {
            if (!this.content) throw error;
            console.warn(error);
            this.content = undefined;
            this.words = otherVersion();
            this.drawn();
            announce(this.words);
        }
    }

    private drawn(): void {
        const { content, state, script } = this;
        const page = content && script.render(content, state, this.shown);
        const markup = shell({
            kind: script.kind, message: this.message, pinned: this.pinned, formats: script.formats, words: this.words, isWorking: this.isWorking,
            isStill: this.isStill, page, standing: content?.standing,
        });
        keepingFocus(this.root, () => {
            patch(this.root, markup.text);
            this.light();
            script.shown?.(this);
        });
        this.sendSize();
    }

    private keep(): void {
        const shown = this.message?.shown;
        keep({ version: 1, kind: this.script.kind, pinned: this.pinned, ...shown && { room: { uri: shown.uri, room: shown.room } }, own: this.state });
    }

    private receive(data: unknown): void {
        const message = readToPane(data);
        switch (message.type) {
            case 'not-taken':
                this.words = otherVersion();
                this.draw();
                announce(this.words);
                return;
            case 'content': return this.take(message);
            case 'selection':
                this.lit = new Set(message.keys);
                if (this.picked !== undefined && this.lit.size > 0 && !this.lit.has(this.picked)) this.picked = undefined;
                if (message.reveal && message.keys[0] !== undefined) return this.pick(message.keys[0]);
                this.light();
                return;
            case 'picked': return this.pick(message.key);
            case 'ticks':
                this.ticks = new Set(message.keys);
                this.draw();
                return;
            case 'following':
                this.pinned = message.pinned;
                this.draw();
                this.keep();
                return;
            case 'holding':
                this.isStill = message.still;
                // nothing else is otherwise, and somebody types
                patch(document.getElementById('still')!, still(this.isStill && this.content !== undefined).text);
                return;
            case 'plain':
                this.words = message.words;
                this.draw();
                announce(message.words);
                return;
        }
    }

    private take(message: ContentMessage): void {
        const before = this.message;
        if (message.kind !== this.script.kind) return;
        this.message = message;
        this.words = '';
        this.isWorking = false;
        if (message.content) this.content = message.content as Content;
        if (message.condition === 'nothing') this.content = undefined;
        this.draw();
        this.keep();
        const shown = message.shown && (!before?.shown || keyOf(before.shown) !== keyOf(message.shown)) ? t('Shows {0}.', message.shown.title) : '';
        const trouble = message.condition !== before?.condition && message.problem ? t('First error: {0}', message.problem.message) : '';
        if (shown || trouble) announce(`${shown} ${trouble}`.trim());
        markPainted();
    }

    /** Marks what the cursor stands in; without drawing anew, since the cursor moves often. */
    private light(also: ReadonlySet<string> = new Set()): void {
        for (const part of this.root.querySelectorAll('[data-key],[data-keys]')) {
            const keys = (part.getAttribute('data-keys') ?? part.getAttribute('data-key')!).split(' ');
            part.classList.toggle('lit', keys.some(key => this.lit.has(key)));
            part.classList.toggle('picked', this.picked !== undefined && keys.includes(this.picked));
            part.classList.toggle('about', keys.some(key => also.has(key)));
        }
        this.script.lit?.(this, also);
    }

    private reveal(): void {
        (this.root.querySelector('.picked') ?? this.root.querySelector('.lit'))?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
    }

    /** One part among those the cursor stands in: it was asked for by hand, here or in another pane. */
    private pick(key: string): void {
        this.picked = key;
        this.script.reveal?.(this, key);
        this.light();
        this.reveal();
    }

    private listen(): void {
        window.addEventListener('message', onceLettersAreThere(event => this.receive(event.data)));
        const { root } = this;
        root.addEventListener('click', event => { if (!event.defaultPrevented) this.clicked(event.target as Element); });
        root.addEventListener('change', event => this.changed(event.target as HTMLInputElement | HTMLSelectElement));
        root.addEventListener('keydown', event => this.key(event));
        document.addEventListener('keydown', event => this.switchKey(event));
        for (const [on, off] of [['pointerover', 'pointerout'], ['focusin', 'focusout']] as const) {
            root.addEventListener(on, event => {
                const lights = (event.target as Element).closest('[data-lights]')?.getAttribute('data-lights');
                if (lights !== undefined && lights !== null) this.light(new Set(lights.split(' ')));
            });
            root.addEventListener(off, event => { if ((event.target as Element).closest('[data-lights]')) this.light(); });
        }
        // a menu closes when somebody goes on elsewhere
        document.addEventListener('pointerdown', event => {
            for (const menu of root.querySelectorAll<HTMLDetailsElement>('details.menu[open]')) if (!menu.contains(event.target as Node)) menu.open = false;
        });
    }

    private clicked(target: Element): void {
        const on = target.closest('[data-act],[data-find],[data-value],[data-at]');
        if (!on || on.closest('button:disabled')) return;
        const act = on.getAttribute('data-act'), find = on.getAttribute('data-find'), value = on.getAttribute('data-value');
        if (act !== null) this.act(act, on);
        else if (find !== null) this.send({ type: 'find', kind: find as PaneKind, key: on.getAttribute('data-key') ?? '' });
        else if (value !== null && on.hasAttribute('data-state')) this.set(withValue(this.state, on.getAttribute('data-state')!, value));
        else if (on.hasAttribute('data-at')) {
            const at = this.content?.sources[Number(on.getAttribute('data-at'))];
            const key = on.closest('[data-key]')?.getAttribute('data-key');
            if (key !== null && key !== undefined) {
                this.picked = key;
                this.light();
                this.send({ type: 'pick', key });
            }
            const was = on.getAttribute('data-was');
            if (at) this.send({ type: 'select', at, ...was !== null && { was } });
        }
    }

    private act(name: string, on: Element): void {
        const own = this.script.acts?.[name];
        if (own) return own(on, this);
        switch (name) {
            case 'pin':
                this.pinned = !this.pinned;
                this.draw();
                this.keep();
                this.send({ type: 'pin', pinned: this.pinned });
                announce(pinWords(this.script.kind, this.pinned));
                return;
            case 'switch': return this.switchTo(on.getAttribute('data-kind') as PaneKind);
            case 'problem': if (this.message?.problem) this.send({ type: 'select', at: this.message.problem.at }); return;
            case 'export': {
                const format = on.getAttribute('data-format') as ExportFormat;
                const menu = on.closest('details');
                if (menu) menu.open = false;
                const file = this.script.file?.(format, this);
                this.send({ type: 'export', format, state: { ...this.state, ticks: [...this.ticks] }, ...file && { file } });
                return;
            }
        }
    }

    private switchTo(kind: PaneKind): void {
        if (kind !== this.script.kind) this.send({ type: 'switch', kind });
    }

    private changed(field: HTMLInputElement | HTMLSelectElement): void {
        if (field.hasAttribute('data-rooms')) {
            const room = this.message?.rooms.find(each => keyOf(each) === field.value);
            if (!room) return;
            this.isWorking = true;
            this.draw();
            this.send({ type: 'choose', uri: room.uri, room: room.room });
            return;
        }
        const tick = field.getAttribute('data-tick'), path = field.getAttribute('data-state');
        const isCheckbox = field instanceof HTMLInputElement && field.type === 'checkbox';
        if (tick !== null && isCheckbox) this.send({ type: 'tick', add: field.checked ? [tick] : [], remove: field.checked ? [] : [tick] });
        else if (path !== null) this.set(withValue(this.state, path, isCheckbox ? field.checked : field.value));
    }

    /** Alt and the number of a pane, as its name in the switch says. By the key's place: with Alt some keyboards write other signs there. */
    private switchKey(event: KeyboardEvent): void {
        const digit = /^(?:Digit|Numpad)([1-9])$/.exec(event.code)?.[1];
        const kind = digit === undefined || !event.altKey || event.ctrlKey || event.metaKey || event.shiftKey ? undefined : PANE_KINDS[Number(digit) - 1];
        if (!kind) return;
        event.preventDefault();
        // the editor has a meaning of its own for some of these
        event.stopPropagation();
        this.switchTo(kind);
    }

    /** Along the switch; Enter goes there, as with any button. */
    private alongSwitch(event: KeyboardEvent, on: Element): void {
        const step = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
        if (step === undefined || event.altKey || event.ctrlKey || event.metaKey) return;
        const all = [...on.parentElement!.querySelectorAll<HTMLElement>('button')], next = all[(all.indexOf(on as HTMLElement) + step + all.length) % all.length];
        event.preventDefault();
        next?.focus();
    }

    private key(event: KeyboardEvent): void {
        const target = event.target as Element, along = target.closest('.switch button');
        if (along) return this.alongSwitch(event, along);
        if (event.key === 'Escape') {
            const menu = target.closest<HTMLDetailsElement>('details.menu[open]');
            if (!menu) return;
            menu.open = false;
            menu.querySelector('summary')?.focus();
        } else if ((event.key === 'Enter' || event.key === ' ') && target.getAttribute('role') === 'button') {
            event.preventDefault();
            this.clicked(target);
        }
    }
}

let painted = 0;
/** For whoever measures: when the browser shows what has come. */
function markPainted(): void {
    const count = ++painted;
    requestAnimationFrame(() => {
        performance.clearMarks('painted');
        performance.mark('painted', { detail: count });
    });
}

function otherVersion(): string {
    return t('This pane and the extension are of different versions. Close the pane and open it again.');
}

/** Style sheets stand in elements that carry the page's nonce: its policy takes no others. */
function addStyle(rules: string): void {
    const style = document.createElement('style');
    style.nonce = document.querySelector<HTMLScriptElement>('script[nonce]')?.nonce ?? '';
    style.textContent = rules;
    document.head.append(style);
}

