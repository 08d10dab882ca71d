import { applyDecorators } from '@nestjs/common';
import { ApiProperty, type ApiPropertyOptions } from '@nestjs/swagger';
import { Transform, Type } from 'class-transformer';
import {
  ArrayMaxSize,
  ArrayMinSize,
  ArrayUnique,
  IsArray,
  IsBoolean,
  IsIn,
  IsInt,
  IsNumber,
  IsObject,
  IsString,
  Length,
  Matches,
  Max,
  Min,
  ValidateBy,
  ValidateIf,
  ValidateNested,
} from 'class-validator';
import { isDate } from '../../shared/edtf.ts';
import { visibilities } from '../../shared/vocabulary.ts';
import { say } from './say.ts';

/** Optional: the field may be left out. Nullable: null is taken and means "nothing known" or "clear it". */
interface Presence {
  readonly optional?: boolean;
  readonly nullable?: boolean;
  readonly description: string;
}

/** A text, trimmed and in Unicode form NFC; empty only where `min` is 0. */
export function TextField(options: Presence & { max: number; min?: number; example?: string }): PropertyDecorator {
  const min = options.min ?? 1;
  return field(
    options,
    {
      type: 'string',
      minLength: min,
      maxLength: options.max,
      ...(options.example === undefined ? {} : { example: options.example }),
    },
    [
      Transform(({ value }: { value: unknown }) => tidyText(value)),
      IsString({ message: say`must be a text` }),
      Length(min, options.max, { message: () => say`must have ${min} to ${options.max} characters` }),
      noNul(),
    ],
  );
}

/** A passphrase as it was typed, with every space; longer ones than `max` are refused, never cut. */
export function PassphraseField(options: Presence & { max: number; min?: number }): PropertyDecorator {
  const min = options.min ?? 1;
  return field(options, { type: 'string', format: 'password', minLength: min, maxLength: options.max }, [
    IsString({ message: say`must be a text` }),
    Length(min, options.max, { message: () => say`must have ${min} to ${options.max} characters` }),
    noNul(),
  ]);
}

/** The text of a file, every character as it came: a signature covers it. */
export function FileTextField(options: Presence & { max: number }): PropertyDecorator {
  return field(options, { type: 'string', minLength: 1, maxLength: options.max }, [
    IsString({ message: say`must be a text` }),
    Length(1, options.max, { message: () => say`must have 1 to ${options.max} characters` }),
  ]);
}

/** A list of short texts. */
export function TextListField(
  options: Presence & { max: number; maxItems: number; pattern?: RegExp; patternWords?: string },
): PropertyDecorator {
  return field(
    options,
    { type: 'array', maxItems: options.maxItems, items: { type: 'string', maxLength: options.max } },
    [
      Transform(({ value }: { value: unknown }) => (Array.isArray(value) ? value.map(tidyText) : value)),
      IsArray({ message: say`must be a list` }),
      ArrayMaxSize(options.maxItems, { message: () => say`must have at most ${options.maxItems} entries` }),
      IsString({ each: true, message: say`must hold texts only` }),
      Length(1, options.max, { each: true, message: () => say`each entry must have 1 to ${options.max} characters` }),
      noNul(true),
      ...(options.pattern
        ? [Matches(options.pattern, { each: true, message: options.patternWords ?? say`has an entry of a wrong form` })]
        : []),
    ],
  );
}

/** A text of a fixed form. */
export function PatternField(
  options: Presence & { pattern: RegExp; words: string; example?: string },
): PropertyDecorator {
  return field(
    options,
    {
      type: 'string',
      pattern: options.pattern.source,
      ...(options.example === undefined ? {} : { example: options.example }),
    },
    [
      Transform(({ value }: { value: unknown }) => tidyText(value)),
      IsString({ message: say`must be a text` }),
      Matches(options.pattern, { message: options.words }),
    ],
  );
}

/** A date as history left it: EDTF, ISO 8601-2:2019 level 1. */
export function DateField(options: Presence): PropertyDecorator {
  return field(
    options,
    {
      type: 'string',
      example: '2021-04-12',
      description: `${options.description} EDTF level 1: 2021-04-12, 2021-04, 1994~, 199X, 1993/1996.`,
    },
    [
      Transform(({ value }: { value: unknown }) => tidyText(value)),
      ValidateBy(
        { name: 'isEdtf', validator: { validate: (value: unknown) => typeof value === 'string' && isDate(value) } },
        {
          message: say`must be a date such as 2021-04-12, 2021-04, 1994~ (about), 199X or 1993/1996, from 1700 to 2199`,
        },
      ),
    ],
  );
}

/** The id of another record. */
export function IdField(options: Presence): PropertyDecorator {
  return field(options, { type: 'string', format: 'uuid' }, [
    Matches(/^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/i, {
      message: say`must be the id of a record`,
    }),
  ]);
}

/** A whole number; in a query string its digits. */
export function IntegerField(options: Presence & { min: number; max: number }): PropertyDecorator {
  return field(options, { type: 'integer', minimum: options.min, maximum: options.max }, [
    Transform(({ value }: { value: unknown }) =>
      typeof value === 'string' && /^-?\d{1,15}$/.test(value) ? Number(value) : value,
    ),
    IsInt({ message: say`must be a whole number` }),
    Min(options.min, { message: () => say`must be at least ${options.min}` }),
    Max(options.max, { message: () => say`must be at most ${options.max}` }),
  ]);
}

/** A number. */
export function NumberField(options: Presence & { min: number; max: number }): PropertyDecorator {
  return field(options, { type: 'number', minimum: options.min, maximum: options.max }, [
    IsNumber({ allowInfinity: false, allowNaN: false }, { message: say`must be a number` }),
    Min(options.min, { message: () => say`must be at least ${options.min}` }),
    Max(options.max, { message: () => say`must be at most ${options.max}` }),
  ]);
}

/** A share or probability, 0 to 1, in a query string: its decimal digits. */
export function ShareField(options: Presence): PropertyDecorator {
  return field(options, { type: 'number', minimum: 0, maximum: 1 }, [
    Transform(({ value }: { value: unknown }) =>
      typeof value === 'string' && /^\d(\.\d{1,20})?(e-\d{1,3})?$/i.test(value) ? Number(value) : value,
    ),
    IsNumber({ allowInfinity: false, allowNaN: false }, { message: say`must be a number from 0 to 1, such as 0.0625` }),
    Min(0, { message: say`must be at least 0` }),
    Max(1, { message: say`must be at most 1` }),
  ]);
}

/** Yes or no; in a query string `true` or `false`. */
export function FlagField(options: Presence): PropertyDecorator {
  return field(options, { type: 'boolean' }, [
    Transform(({ value }: { value: unknown }) => (value === 'true' ? true : value === 'false' ? false : value)),
    IsBoolean({ message: say`must be true or false` }),
  ]);
}

/** One word of a closed vocabulary. */
export function ChoiceField(choices: readonly string[], options: Presence): PropertyDecorator {
  return field(options, { type: 'string', enum: [...choices] }, [
    IsIn(choices, { message: () => say`must be one of ${choices.join(', ')}` }),
  ]);
}

/** Who may see a record. */
export function VisibilityField(description: string): PropertyDecorator {
  return ChoiceField(visibilities, { optional: true, description });
}

/** A list of words of a closed vocabulary, each once. */
export function ChoiceListField(choices: readonly string[], options: Presence): PropertyDecorator {
  return field(
    options,
    { type: 'array', maxItems: choices.length, uniqueItems: true, items: { type: 'string', enum: [...choices] } },
    [
      IsArray({ message: say`must be a list` }),
      ArrayUnique({ message: say`must hold each word once` }),
      IsIn(choices, { each: true, message: () => say`must hold only ${choices.join(', ')}` }),
    ],
  );
}

/** An instant, as RFC 3339 writes it: a day, a time and the offset from UTC. */
export function InstantField(options: Presence): PropertyDecorator {
  return field(options, { type: 'string', format: 'date-time', example: '2026-03-01T12:00:00Z' }, [
    IsString({ message: say`must be a text` }),
    ValidateBy(
      {
        name: 'isInstant',
        validator: {
          validate: (value: unknown) =>
            typeof value === 'string' &&
            /^\d{4}-\d\d-\d\dT\d\d:\d\d(:\d\d(\.\d{1,9})?)?(Z|[+-]\d\d:\d\d)$/.test(value) &&
            !Number.isNaN(Date.parse(value)),
        },
      },
      { message: say`must be an instant such as 2026-03-01T12:00:00Z` },
    ),
  ]);
}

/** One object, checked. */
export function ObjectField(type: () => new () => object, options: Presence): PropertyDecorator {
  return field(options, { type: () => type() }, [
    IsObject({ message: say`must be an object` }),
    ValidateNested({ message: say`must be an object` }),
    Type(type),
  ]);
}

/** A list of objects, each checked. */
export function ListField(
  type: () => new () => object,
  options: Presence & { max: number; min?: number },
): PropertyDecorator {
  return field(
    options,
    // Nest takes a function for a lazy type only by its name, "type"; one that was passed in has another
    { type: () => type(), isArray: true, maxItems: options.max, ...(options.min ? { minItems: options.min } : {}) },
    [
      IsArray({ message: say`must be a list` }),
      ArrayMaxSize(options.max, { message: () => say`must have at most ${options.max} entries` }),
      ...(options.min
        ? [ArrayMinSize(options.min, { message: () => say`must have at least ${options.min} entries` })]
        : []),
      // the library would check a list within the list member by member and let it through
      IsObject({ each: true, message: say`must hold objects` }),
      ValidateNested({ each: true, message: say`must hold objects` }),
      Type(type),
    ],
  );
}

/** Describes the visibility of a record in a view. */
export function ShownVisibility(): PropertyDecorator {
  return Shown({
    description:
      'Who may see it: private: its keeper and the registrars (a remark: its keeper alone; an animal besides: keepers who gave it, and one to whom it is ' +
      'on offer); club: every member; public: anyone, where the club allows it.',
    enum: visibilities,
  });
}

/** The first or last calendar day that a date may mean (`date`: what it is called, such as "laying date"). */
export function ShownDay(bound: 'First' | 'Last', date: string): PropertyDecorator {
  return Shown({
    description: `${bound} calendar day that the ${date} may mean; null where it is open or not given.`,
    type: String,
    format: 'date',
    nullable: true,
  });
}

/** Describes a field of a view. */
export function Shown(options: ApiPropertyOptions & { description: string }): PropertyDecorator {
  return ApiProperty(options);
}

function field(presence: Presence, schema: ApiPropertyOptions, rules: PropertyDecorator[]): PropertyDecorator {
  const { optional = false, nullable = false, description } = presence;
  const skip = ValidateIf((_, value: unknown) => !((optional && value === undefined) || (nullable && value === null)));
  return applyDecorators(
    ApiProperty({ description, required: !optional, nullable, ...schema } as ApiPropertyOptions),
    skip,
    ...rules,
  );
}

function tidyText(value: unknown): unknown {
  return typeof value === 'string' ? value.trim().normalize('NFC') : value;
}

/** PostgreSQL cannot hold U+0000, nor half a surrogate pair. */
function noNul(each = false): PropertyDecorator {
  const isStorable = (value: unknown): boolean =>
    typeof value === 'string' && !value.includes('\0') && value.isWellFormed();
  return ValidateBy(
    { name: 'isStorable', validator: { validate: isStorable } },
    { each, message: say`holds a character that cannot be stored` },
  );
}
