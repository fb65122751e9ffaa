import { identity, type BodyInput, type Me } from '@yardfall/contracts';
import { languages, messageOf, quantity, render, unitSystems, type FormatOptions, type Language, type MessageCode, type Params, type QuantityKind, type Units } from '@yardfall/text';
import { useQuery, useQueryClient } from '@tanstack/react-query';
import { createContext, use, useCallback, useEffect, useMemo, useState, type ReactNode } from 'react';
import { call } from './api.ts';
import { ApiProblem } from './problem.ts';
import { read } from './query.ts';
import { kept, keep } from './keep.ts';
import { arrivalOf, isHere, learnLanguage } from './words.ts';

export const themes = ['auto', 'light', 'dark'] as const;
export type Theme = (typeof themes)[number];

export interface Preferences {
  readonly language: Language;
  readonly units: Units;
  readonly theme: Theme;
}

interface Reader extends Preferences {
  /** The language that was asked for; the page takes it when its words are here. */
  readonly asked: Language;
  readonly change: (change: Partial<Preferences>) => void;
}

const ReaderContext = createContext<Reader | null>(null);

/** Who is signed in, asked once for the whole page: most parts of it want to know. */
export interface SignedIn {
  readonly me: Me | null;
  readonly pending: boolean;
}
const SignedInContext = createContext<SignedIn>({ me: null, pending: true });
export const useSignedIn = (): SignedIn => use(SignedInContext);

/** How this person reads: kept with the account, and on this device before signing in. */
export function ReaderProvider({ children }: { readonly children: ReactNode }) {
  const [own, setOwn] = useState<Preferences>(firstPreferences);
  const queries = useQueryClient();
  const meQuery = read(identity.me);
  const { data: answer, error, isPending: pending } = useQuery({ ...meQuery, retry: false });
  // A phone that was cut off names nobody, whatever it knew a moment ago.
  const me = error instanceof ApiProblem && error.code === 'auth.phoneCutOff' ? undefined : answer?.data;
  const wanted = useMemo<Preferences>(() => (me ? pick(me) : own), [me, own]);
  // The page goes on in the language it has until the words of the other one are here.
  const [language, setLanguage] = useState(own.language);
  const now = useMemo<Preferences>(() => ({ ...wanted, language }), [wanted, language]);

  useEffect(() => {
    let isAsked = true;
    void learnLanguage(wanted.language).then(() => {
      if (isAsked) setLanguage(wanted.language);
    }, () => undefined); // without a network the page stays as it is; the choice is kept
    return () => { isAsked = false; };
  }, [wanted.language]);

  useEffect(() => {
    document.documentElement.lang = now.language;
    if (now.theme === 'auto') delete document.documentElement.dataset.theme;
    else document.documentElement.dataset.theme = now.theme;
    keep('reader', wanted);
  }, [now, wanted]);

  const change = useCallback((asked: Partial<Preferences>) => {
    setOwn({ ...wanted, ...asked });
    if (!me) return;
    queries.setQueryData(meQuery.queryKey, { data: { ...me, ...asked }, etag: null });
    // The screen has changed already; if the office cannot be reached the choice still holds on this device.
    call(identity.updatePreferences, { body: asked as BodyInput<typeof identity.updatePreferences> }).catch(() => keep('reader', { ...wanted, ...asked }));
  }, [me, meQuery.queryKey, queries, wanted]);

  const signedIn = useMemo<SignedIn>(() => ({ me: me ?? null, pending }), [me, pending]);
  const reader = useMemo<Reader>(() => ({ ...now, asked: wanted.language, change }), [now, wanted.language, change]);
  return <SignedInContext value={signedIn}><ReaderContext value={reader}>{children}</ReaderContext></SignedInContext>;
}

export function useReader(): Reader {
  const reader = use(ReaderContext);
  if (!reader) throw new Error('useReader stands outside ReaderProvider');
  return reader;
}

export interface Text {
  readonly language: Language;
  readonly units: Units;
  /** A sentence of the catalogues. */
  readonly t: (code: MessageCode, params?: Params, options?: FormatOptions) => string;
  /** A sentence whose code came from the office: a finding, a hold, a trail entry. */
  readonly say: (code: string, params?: Params, options?: FormatOptions) => string;
  /** One figure with its unit, from SI. */
  readonly q: (kind: QuantityKind, value: number | string, options?: FormatOptions) => string;
}

export function useText(): Text {
  const { language, units } = useReader();
  return useMemo(() => textFor(language, units), [language, units]);
}

export function textFor(language: Language, units: Units): Text {
  const t: Text['t'] = (code, params, options) => {
    awaitWords(code, language);
    return render(language, units, code, params, options);
  };
  return {
    language,
    units,
    t,
    // A page that stayed open over a release may meet a code that it does not know yet.
    say: (code, params, options) => {
      awaitWords(code, language);
      return t(messageOf(code) ?? 'ui.unknownText', messageOf(code) === null ? { code } : params, options);
    },
    q: (kind, value, options) => quantity(language, units, kind, value, options),
  };
}

/** A sentence that is still on its way holds up the part of the page that says it, as a page that is still on its way does. */
function awaitWords(code: string, language: Language): true {
  const arrival = isHere(code, language) ? null : arrivalOf(language);
  // oxlint-disable-next-line typescript/only-throw-error -- React waits for a thrown promise
  if (arrival !== null) throw arrival;
  return true;
}

function pick(me: Me): Preferences {
  return { language: me.language, units: me.units, theme: me.theme };
}

/** How this device was last read, before anybody is known. */
export function firstPreferences(): Preferences {
  const stored = kept('reader') as Partial<Preferences> | null;
  const spoken: Language = navigator.language.startsWith('es') ? 'es' : 'en';
  return {
    language: languages.find((l) => l === stored?.language) ?? spoken,
    units: unitSystems.find((u) => u === stored?.units) ?? 'us',
    theme: themes.find((t) => t === stored?.theme) ?? 'auto',
  };
}
