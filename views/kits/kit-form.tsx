import type { FC } from 'hono/jsx';
import type { UnitSystem } from '../../shared/units.ts';
import type { KitFormFacts } from '../../src/usecases/kits/kit-model.ts';
import { Button } from '../parts/button.tsx';
import { ChoiceField, type FieldErrors, SelectField, TextField } from '../parts/field.tsx';

export const BY_SIZE = '/kits/by-size';

/** The labels of the fields, for the words of what was wrong. */
export const KIT_LABELS: Readonly<Record<string, string>> = {
  ...{ length: 'Length', width: 'Width', cutLength: 'Corner left out, along', cutWidth: 'Corner left out, across' },
  ...{ courses: 'Courses', ground: 'Pins into the ground', payload: 'One load carries', name: 'Name' },
};

const SHAPES = [
  { value: 'rectangle', text: 'Rectangle' },
  { value: 'L', text: 'L' },
  { value: 'row', text: 'One straight row' },
];
const FACES = [
  { value: 'outside', text: 'Outside' },
  { value: 'inside', text: 'Inside' },
];

/** A number alone is in the yard's own units. */
const EXAMPLES: Readonly<Record<UnitSystem, string>> = {
  metric: '1235, 1.2 m, 4 ft 6 in, 54 1/2"',
  US: '4 ft 6 in, 54 1/2, 54 1/2", 1235 mm',
};

/** The size that a kit is worked out from. Each answer comes as it is typed; without script, at the button. */
export const KitForm: FC<{ form: KitFormFacts; system: UnitSystem; errors: FieldErrors }> = ({
  form: { typed, kinds, pinMaterials },
  system,
  errors,
}) => {
  const field = (name: string) => ({ name, label: KIT_LABELS[name] ?? name, value: typed[name], errors });
  return (
    <form
      class="kit-form"
      data-address
      method="get"
      action={BY_SIZE}
      data-hx-get={BY_SIZE}
      data-hx-trigger="input delay:200ms"
      data-hx-target="#kit-found"
      data-hx-sync="this:replace"
      aria-label="The size of the kit"
    >
      <ChoiceField name="shape" label="Shape" value={typed.shape} choices={SHAPES} />
      <div class="not-row">
        <ChoiceField name="faces" label="Measured" value={typed.faces} choices={FACES} />
      </div>
      <div class="field-row">
        <TextField {...field('length')} width="short" />
        <div class="not-row">
          <TextField {...field('width')} width="short" />
        </div>
        <div class="only-l">
          <TextField {...field('cutLength')} width="short" />
        </div>
        <div class="only-l">
          <TextField {...field('cutWidth')} width="short" />
        </div>
        <TextField {...field('courses')} type="number" min={1} max={12} width="short" />
      </div>
      <div class="field-row">
        <TextField {...field('ground')} width="short" />
        <TextField {...field('payload')} width="short" />
        {kinds.length > 1 && <SelectField name="panels" label="Panels" value={typed.panels} options={kinds} />}
        {pinMaterials.length > 1 && (
          <SelectField name="pins" label="Pins from" value={typed.pins} options={pinMaterials} />
        )}
      </div>
      <p class="hint">
        Write a length as you would say it: {EXAMPLES[system]}. What one pallet or car may carry can stay empty.
      </p>
      <div class="buttons">
        <Button>Work it out</Button>
      </div>
    </form>
  );
};
