/**
 * The rules that the database holds, in words: what a keeper is told when one of them stands against a change, and the
 * field of the request that it concerns.
 */
export const constraintMessages: Record<string, { readonly pointer: string; readonly detail: string }> = {
  individual_code_unique: {
    pointer: '/code',
    detail: 'You already have an animal with this code. Choose another code.',
  },
};
