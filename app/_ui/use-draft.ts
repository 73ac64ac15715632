'use client';

import { type RefObject, useCallback, useEffect, useRef, useState } from 'react';

type Field = HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement;

/**
 * Fields that a person types into or chooses from, each with a name of its own: the name in the form, and its place among those of that name; of
 * buttons of which one is chosen, the value, since there may be others next time.
 */
function fieldsOf(form: HTMLFormElement): [string, Field][] {
  const seen = new Map<string, number>();
  return [...form.elements].flatMap((element): [string, Field][] => {
    const typed =
      element instanceof HTMLTextAreaElement ||
      element instanceof HTMLSelectElement ||
      (element instanceof HTMLInputElement && !['hidden', 'file', 'submit'].includes(element.type));
    if (!typed || element.name === '') return [];
    if (element.type === 'radio') return [[`${element.name} =${element.value}`, element]];
    const at = seen.get(element.name) ?? 0;
    seen.set(element.name, at + 1);
    return [[`${element.name} ${at}`, element]];
  });
}

function isTicked(field: Field): field is HTMLInputElement {
  return field instanceof HTMLInputElement && (field.type === 'checkbox' || field.type === 'radio');
}

function typedInto(field: Field): string {
  return isTicked(field) ? String(field.checked) : field.value;
}

/** What the page was sent with. */
function sentWith(field: Field): string {
  if (isTicked(field)) return String(field.defaultChecked);
  if (!(field instanceof HTMLSelectElement)) return field.defaultValue;
  const options = [...field.options];
  return (options.find(({ defaultSelected }) => defaultSelected) ?? options[0])?.value ?? '';
}

function put(field: Field, value: string): void {
  if (isTicked(field)) field.checked = value === 'true';
  else field.value = value;
}

/** What was typed and not sent, by field; nothing where the browser keeps nothing. */
export function readDraft(key: string): Map<string, string> {
  try {
    const kept: unknown = JSON.parse(sessionStorage.getItem(key) ?? '{}');
    return new Map(Object.entries(Object(kept)).flatMap(([name, value]) => (typeof value === 'string' ? [[name, value]] : [])));
  } catch {
    return new Map();
  }
}

/** Keeps what was typed for this window; an empty list forgets it. */
export function writeDraft(key: string, fields: readonly (readonly [string, string])[]): void {
  try {
    if (fields.length === 0) sessionStorage.removeItem(key);
    else sessionStorage.setItem(key, JSON.stringify(Object.fromEntries(fields)));
  } catch {
    // A browser that keeps nothing for the page: what is typed then lives as long as the page.
  }
}

/**
 * An action that leads to another page when it is done: what was typed for it is then forgotten. It stays where there was no answer, or a refusal.
 * `name` is that of the form's draft.
 */
export function leadingAway<S>(name: string, action: (before: S, form: FormData) => Promise<S>) {
  return async (before: S, form: FormData): Promise<S> => {
    try {
      return await action(before, form);
    } catch (error) {
      // The way to the other page comes as an error of this mark.
      if (error instanceof Error && 'digest' in error && String(error.digest).startsWith('NEXT_REDIRECT'))
        writeDraft(keyOf(name), []);
      throw error;
    }
  };
}

/** Under which a form's draft is kept. */
export function keyOf(name: string): string {
  return `draft ${name}`;
}

function valuesOf(form: HTMLFormElement): Map<string, string> {
  return new Map(fieldsOf(form).map(([id, field]) => [id, typedInto(field)]));
}

/**
 * Keeps what is typed into a form, in this window alone, until it is saved: neither a reload nor a way back and forth loses it. `name` tells
 * forms apart; `saved` is another object, or another word, each time the form was saved; `kept` is the draft once the form has the fields that
 * it needs, where that takes a look at it first. Tells whether something was put back, and throws it away on request.
 */
export function useDraft(
  form: RefObject<HTMLFormElement | null>,
  name: string,
  saved: unknown,
  kept?: ReadonlyMap<string, string>,
): { readonly restored: boolean; readonly discard: () => void } {
  const key = keyOf(name);
  const [restored, setRestored] = useState(false);
  // As the form was before anybody typed: a refused form comes back with other values of its own.
  const start = useRef<ReadonlyMap<string, string>>(new Map());
  useEffect(() => {
    const here = form.current;
    if (!here) return;
    const fields = fieldsOf(here);
    start.current = new Map([...fields.map(([id, field]) => [id, sentWith(field)] as const), ...start.current]);
    const draft = kept ?? readDraft(key);
    // A quick hand, or a slow line: typed before the page was alive, and later than any draft.
    const quick = new Set(fields.flatMap(([id, field]) => (typedInto(field) === sentWith(field) ? [] : [id])));
    const quickNames = new Set(fields.flatMap(([id, field]) => (quick.has(id) ? [field.name] : [])));
    const back = fields.filter(
      ([id, field]) =>
        // Of several buttons a quick choice holds for all.
        !(field.type === 'radio' ? quickNames.has(field.name) : quick.has(id)) &&
        (draft.get(id) ?? typedInto(field)) !== typedInto(field),
    );
    for (const [id, field] of back) put(field, draft.get(id) ?? '');
    if (back.length > 0) setRestored(true);
    const keep = (): void =>
      writeDraft(
        key,
        [...valuesOf(here)].filter(([id, value]) => value !== start.current.get(id)),
      );
    if (quick.size > 0) keep();
    // Fields may belong to a form that they do not stand in.
    const typed = ({ target }: Event): void => {
      if (target instanceof HTMLElement && 'form' in target && target.form === here) keep();
    };
    document.addEventListener('input', typed);
    return () => document.removeEventListener('input', typed);
  }, [form, key, kept]);
  useEffect(() => {
    if (saved === undefined || !form.current) return;
    writeDraft(key, []);
    start.current = valuesOf(form.current);
    setRestored(false);
  }, [saved, form, key]);
  const discard = useCallback(() => {
    writeDraft(key, []);
    for (const [id, field] of form.current ? fieldsOf(form.current) : []) put(field, start.current.get(id) ?? '');
    setRestored(false);
  }, [form, key]);
  return { restored, discard };
}
