import type { Tx } from '../../../db/open.ts';
import { sizesOfCastings } from '../../../db/stores/casting-size-store.ts';
import { addKit } from '../../../db/stores/kit-store.ts';
import { unitsOfYard } from '../../../db/stores/units-store.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import { type Changed, changing } from '../plan/changing.ts';
import { type KitTyped, kitSizeTyped, packMinutesTyped } from '../typed/kit-size-form.ts';
import { kitId, kitName, kitPieces, kitPins, packMinutesGuess } from './kit-contents.ts';
import { kitLaid } from './kit-laid.ts';
import { pinLengthMm, pinMaterial } from './kit-pins.ts';
import { panelKinds } from './panel-kinds.ts';

const add = async (tx: Tx, yard: YardFile, typed: KitTyped): Promise<Outcome<{ id: string; name: string }>> => {
  const system = await unitsOfYard(tx);
  const kinds = panelKinds(yard, await sizesOfCastings(tx));
  const kind = kinds.find(({ key }) => key === typed.panels) ?? kinds[0];
  if (!kind) return refuse('length', 'No panel has a size yet.');
  const asked = kitSizeTyped(typed, system);
  if (!asked.ok) return asked;
  const { size } = asked.value;
  const { made } = kitLaid(size, kind);
  if (!made) return refuse('length', "That size can't be made from these panels.");
  const pins = pinMaterial(yard, typed.pins);
  if (pins?.stickMm !== undefined && pinLengthMm(size, kind.heightMm) > pins.stickMm)
    return refuse('courses', 'The pins would be longer than what they are cut from.');
  const pieces = kitPieces(made, kind);
  const packMinutes = packMinutesTyped(typed.packMinutes ?? '', packMinutesGuess(pieces));
  if (packMinutes === null) return refuse('packMinutes', 'How many minutes? Write a whole number.');
  const name = typed.name || kitName(size, system);
  if (yard.kits.some((one) => one.name === name))
    return refuse('name', 'There is a kit of that name. Give it another.');
  const id = kitId(name, yard);
  const counted = pieces.map(({ casting, count }) => ({ casting: casting.id, count }));
  await addKit(tx, { id, name, pieces: counted, parts: [], cuts: kitPins(made, size, kind, pins), packMinutes }, size);
  return done({ id, name });
};

/** Adds the kit of the size that was typed to what can be ordered. */
export const addKitBySize = (
  context: UseCaseContext,
  typed: KitTyped,
): Promise<Outcome<Changed<{ id: string; name: string }>>> =>
  changing(context, { kind: 'kit added', words: ({ name }) => `${name} added to the kits` }, (tx, yard) =>
    add(tx, yard, typed),
  );
