import type { Role } from '$shared/vocabulary.ts';
import type { PermissionRule } from './permissions.ts';

/** A keeper with what they may do besides keeping animals. */
export interface KeeperWithRoles {
  id: string;
  name: string;
  roles: Role[];
}

/** Who asks, in which club, and what they may do. */
export interface SessionAnswer {
  state: 'setup' | 'signed-out' | 'signed-in';
  club: { name: string; demo: boolean; publicReading: boolean } | null;
  keeper: KeeperWithRoles | null;
  permissions: PermissionRule[];
  /** Invented keepers to look around as; only in a demo club, and only while nobody is signed in. */
  demoKeepers?: KeeperWithRoles[];
  /** Most bytes of a PDF, and of a picture. */
  fileLimits?: { documentBytes: number; pictureBytes: number };
  /** The address under which members reach the register; null where none was set. */
  address?: string | null;
}

/** What an invitation or a link for a new passphrase offers to whoever opens it. */
export interface LinkOffer {
  kind: 'invitation' | 'reset';
  club: string;
  /** Whose passphrase it sets. */
  name?: string | null;
  expiresAt: string;
}

/** A member of the club as the Club page shows them. */
export interface Member extends KeeperWithRoles {
  version: number;
  /** Where they live, roughly; null: not said. */
  region: string | null;
  /** When they left the club; null: they are in it. */
  leftAt: string | null;
}

/** A link that was made and not used yet. Its secret is told once, on being made. */
export interface SignInLink {
  id: string;
  kind: 'invitation' | 'reset';
  /** Whose passphrase it sets; null for an invitation. */
  keeper: { id: string; name: string } | null;
  roles: Role[];
  note: string | null;
  madeBy: { id: string; name: string };
  createdAt: string;
  expiresAt: string;
}

/** A link just made, with the path that is shown this once. */
export interface MadeLink extends SignInLink {
  path: string;
}

export interface ClubSettings {
  name: string;
  demo: boolean;
  publicReading: boolean;
  version: number;
}

/** A program's key to the register. */
export interface Token {
  id: string;
  name: string;
  scope: 'read' | 'write';
  createdAt: string;
  expiresAt: string | null;
  lastUsedAt: string | null;
}

/** A token just made, with the secret that is shown this once. */
export interface MadeToken extends Token {
  token: string;
}
