/** Behind a room's name and a point: what another pane asks for to have what changed marked in the view of the room. No piece is called so. */
export const WHAT_CHANGED = 'what-changed';
