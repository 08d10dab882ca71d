import { SetMetadata } from '@nestjs/common';

/** Where a handler says that it is open. */
export const forAnyoneKey = 'linekeeper:for-anyone';

/** A route that is open to strangers, such as signing in. */
export const ForAnyone = (): MethodDecorator & ClassDecorator => SetMetadata(forAnyoneKey, true);
