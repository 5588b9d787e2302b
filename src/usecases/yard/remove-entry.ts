import type { Tx } from '../../../db/open.ts';
import { removeCasting } from '../../../db/stores/casting-store.ts';
import { dropFigures } from '../../../db/stores/figure-store.ts';
import { removeKit } from '../../../db/stores/kit-store.ts';
import { removeMaterial } from '../../../db/stores/material-store.ts';
import { removeMix } from '../../../db/stores/mix-store.ts';
import { removeMould } from '../../../db/stores/mould-store.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { done, refuse } from '../core/context.ts';
import type { Edit } from '../plan/save-edit.ts';
import { onRecord, type Removable, usesOf, usesText } from './uses-of.ts';

interface Removal {
  of(yard: YardFile): readonly { id: string; name?: string }[];
  remove(tx: Tx, id: string): Promise<void>;
  /** "Panel 900 removed from what is cast" */
  from: string;
}

const REMOVALS: Readonly<Record<Removable, Removal>> = {
  casting: { of: ({ castings }) => castings, remove: removeCasting, from: ' from what is cast' },
  mix: { of: ({ mixes }) => mixes, remove: removeMix, from: '' },
  material: { of: ({ materials }) => materials, remove: removeMaterial, from: ' from the stock book' },
  mould: { of: ({ moulds }) => moulds, remove: removeMould, from: '' },
  kit: { of: ({ kits }) => kits, remove: removeKit, from: ' from the kits' },
};

/** Takes an entry of the yard away, with its guesses and what was typed for it; refused at `uses` where something needs it. */
export const removeEntry = (kind: Removable, id: string): Edit<string> => ({
  what: { kind: `${kind} removed`, words: (name) => `${name} removed${REMOVALS[kind].from}` },
  work: async (tx, yard) => {
    const { of, remove } = REMOVALS[kind];
    const entry = of(yard).find((one) => one.id === id);
    if (!entry) return refuse('name', 'It is not there any more.');
    const name = entry.name ?? id;
    const uses = usesOf(yard, await onRecord(tx), kind, id);
    if (uses.length > 0) return refuse('uses', usesText(name, uses));
    await remove(tx, id);
    await dropFigures(tx, { kind, id });
    return done(name);
  },
});
