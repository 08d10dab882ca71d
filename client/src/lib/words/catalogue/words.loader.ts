import toRuntime, { type CatalogModule } from 'wuchale/runtime';
import { language } from '../language.ts';

/** The words of a file in the language of this visit. */
export const getRuntime = (catalogues: Record<string, CatalogModule>) => toRuntime(catalogues[language], language);

/** The same where the words would be watched: the language does not change during a visit. */
export const getRuntimeRx: typeof getRuntime = (catalogues) => getRuntime(catalogues);
