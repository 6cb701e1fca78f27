/** What a key does on the picture. Radians to turn, shares of the picture to move. */
type KeyAct =
    | { readonly do: 'turn' | 'move'; readonly aside: number; readonly up: number }
    | { readonly do: 'zoom'; readonly by: number }
    | { readonly do: 'walk'; readonly by: 1 | -1 }
    | { readonly do: 'fit' | 'words' | 'nothing' | 'play' | 'changed' };

const TURN = Math.PI / 24, MOVE = 0.08, ZOOM = 1.2;
const ARROWS: Readonly<Record<string, readonly [number, number]>> = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };

export function keyOf({ key, shiftKey, ctrlKey, altKey, metaKey }: Pick<KeyboardEvent, 'key' | 'shiftKey' | 'ctrlKey' | 'altKey' | 'metaKey'>): KeyAct | null {
    // the editor's and the system's own
    if (ctrlKey || altKey || metaKey) return null;
    const arrow = ARROWS[key];
    if (arrow) return shiftKey ? { do: 'move', aside: arrow[0] * MOVE, up: arrow[1] * MOVE } : { do: 'turn', aside: arrow[0] * TURN, up: -arrow[1] * TURN };
    switch (key) {
        case '+': case '=': return { do: 'zoom', by: 1 / ZOOM };
        case '-': case '_': return { do: 'zoom', by: ZOOM };
        case 'n': case 'N': return { do: 'walk', by: 1 };
        case 'p': case 'P': return { do: 'walk', by: -1 };
        case 'c': case 'C': return { do: 'changed' };
        case 'Home': return { do: 'fit' };
        case 'Enter': return { do: 'words' };
        case 'Escape': return { do: 'nothing' };
        case ' ': return { do: 'play' };
        default: return null;
    }
}
