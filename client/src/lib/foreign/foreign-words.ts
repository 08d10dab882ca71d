import type { components } from '../api/openapi.d.ts';

type Schemas = components['schemas'];
export type OtherRegister = Schemas['OtherRegisterView'];
export type ForeignSheet = Schemas['ForeignSheetView'];
