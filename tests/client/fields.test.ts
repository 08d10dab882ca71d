import { cleanup, render, screen } from '@testing-library/svelte';
import { tick } from 'svelte';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { ProblemError } from '$lib/api/problem.ts';
import DateField from '$lib/ui/date-field.svelte';
import { dateBeside, dateProblem } from '$lib/ui/typed-dates.ts';
import Field from '$lib/ui/field.svelte';
import { FormState } from '$lib/ui/form-state.svelte.ts';

afterEach(cleanup);

const textOf = (ids: string | null): string =>
  (ids ?? '')
    .split(' ')
    .map((id) => document.getElementById(id)?.textContent ?? '')
    .join(' ');

describe('a field', () => {
  it('is quiet while nothing is wrong', () => {
    render(Field, { label: 'code' });
    const input = screen.getByLabelText('code');
    expect(input.getAttribute('aria-invalid')).toBeNull();
    expect(input.getAttribute('aria-describedby')).toBeNull();
  });

  it('tells what is wrong to the ear as well as to the eye', () => {
    render(Field, { label: 'hatched', error: 'Before the laying date, 2026-11-20.', hint: 'as far as known' });
    const input = screen.getByLabelText('hatched');
    expect(input.getAttribute('aria-invalid')).toBe('true');
    expect(textOf(input.getAttribute('aria-describedby'))).toContain('Before the laying date, 2026-11-20.');
    expect(textOf(input.getAttribute('aria-describedby'))).toContain('as far as known');
  });

  it('tells the unusual without calling it wrong', () => {
    render(Field, { label: 'dam', unusual: 'She was five months old then.' });
    const input = screen.getByLabelText('dam');
    expect(input.getAttribute('aria-invalid')).toBeNull();
    expect(textOf(input.getAttribute('aria-describedby'))).toContain('She was five months old then.');
  });
});

describe('a date field', () => {
  it('says a vague date in words beside it', () => {
    render(DateField, { label: 'laid', value: '2026-11~' });
    expect(screen.getByText('about November 2026')).toBeTruthy();
    expect(dateBeside('1994~')).toBe('about 1994');
    expect(dateBeside('1994')).toBeUndefined();
  });

  it('speaks up on leaving the field, not under the typing hand', async () => {
    render(DateField, { label: 'laid', value: '03/04/25' });
    const input = screen.getByLabelText('laid');
    expect(input.getAttribute('aria-invalid')).toBeNull();
    input.dispatchEvent(new FocusEvent('blur'));
    await tick();
    // nothing may move while a click is on its way
    expect(input.getAttribute('aria-invalid')).toBeNull();
    await vi.waitFor(() => expect(input.getAttribute('aria-invalid')).toBe('true'));
    expect(textOf(input.getAttribute('aria-describedby'))).toContain('03/04/25');
  });

  it('takes every date that the register takes and no other', () => {
    for (const good of ['', '2021-04-12', '2021-04', '2021', '2021~', '199X', '1993/1996'])
      expect(dateProblem(good)).toBeUndefined();
    for (const bad of ['12.04.2021', '2021-02-30', 'spring', '1996/1993']) expect(dateProblem(bad)).toContain(bad);
  });
});

describe('a form that was refused', () => {
  afterEach(() => document.body.replaceChildren());

  const refusal = new ProblemError(422, {
    detail: 'The animal cannot be written.',
    errors: [
      { pointer: '/hatched', detail: 'Before the laying date.' },
      { pointer: '/somewhere/else', detail: 'No field shows this.' },
    ],
  });

  it('puts the errors of the service on the fields of the same pointer and keeps the others', async () => {
    const form = new FormState((pointer) => pointer === '/hatched');
    expect(await form.run<string>(() => Promise.reject(refusal))).toBeUndefined();
    expect(form.errors).toEqual({ '/hatched': 'Before the laying date.' });
    expect(form.others.map((place) => place.detail)).toEqual(['No field shows this.']);
    expect(form.summary).toBe('The animal cannot be written.');
    expect(form.busy).toBe(false);
  });

  it('puts the focus on the first wrong field', async () => {
    document.body.innerHTML = '<form><input id="one"><input id="two" aria-invalid="true"></form>';
    const form = new FormState();
    const element = document.querySelector('form');
    if (!element) throw new Error('the form is missing');
    form.attach(element);
    await form.take(refusal);
    expect(document.activeElement?.id).toBe('two');
  });

  it('lets what is no refusal through, so that a fault of ours is seen', async () => {
    const form = new FormState();
    await expect(form.run(() => Promise.reject(new TypeError('a fault')))).rejects.toThrow('a fault');
  });

  it('does not write twice while it writes', async () => {
    const form = new FormState();
    const answers: ((text: string) => void)[] = [];
    const first = form.run(() => new Promise<string>((resolve) => answers.push(resolve)));
    expect(await form.run(() => Promise.resolve('again'))).toBeUndefined();
    answers[0]?.('written');
    expect(await first).toBe('written');
  });
});
