import { type ReactNode, useId } from 'react';

/** A label over its field; the field is given the id. */
export function Field({ label, children }: { readonly label: string; readonly children: (id: string) => ReactNode }) {
  const id = useId();
  return (
    <div className="record-field">
      <label className="note" htmlFor={id}>
        {label}
      </label>
      {children(id)}
    </div>
  );
}

interface NumberFieldProps {
  readonly label: string;
  readonly name: string;
  readonly step?: number | 'any';
  readonly min?: number | undefined;
  readonly value?: number;
  readonly required?: boolean;
}

export function NumberField({ label, name, step = 1, min = 0, value, required = false }: NumberFieldProps) {
  return (
    <Field label={label}>
      {(id) => (
        <input
          id={id}
          name={name}
          type="number"
          {...{ min, step, required }}
          defaultValue={value}
          inputMode="decimal"
        />
      )}
    </Field>
  );
}

export function TextField({
  label,
  name,
  required = false,
}: {
  readonly label: string;
  readonly name: string;
  readonly required?: boolean;
}) {
  return <Field label={label}>{(id) => <input id={id} name={name} required={required} autoComplete="off" />}</Field>;
}

export function DateField({
  label,
  name,
  value = '',
  max,
}: {
  readonly label: string;
  readonly name: string;
  readonly value?: string;
  readonly max?: string;
}) {
  return (
    <Field label={label}>{(id) => <input id={id} name={name} type="date" defaultValue={value} max={max} />}</Field>
  );
}

export function ChoiceField({
  label,
  name,
  options,
}: {
  readonly label: string;
  readonly name: string;
  readonly options: readonly (readonly [value: string, shown: string])[];
}) {
  return (
    <Field label={label}>
      {(id) => (
        <select id={id} name={name}>
          {options.map(([value, shown]) => (
            <option key={value} value={value}>
              {shown}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}

/** What a form says under a name: text, or null where it is blank. */
export const said = (form: FormData, name: string): string | null => String(form.get(name) ?? '').trim() || null;

export function number(form: FormData, name: string): number | null {
  const text = said(form, name);
  return text === null ? null : Number(text);
}
