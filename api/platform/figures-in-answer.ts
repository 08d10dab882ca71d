import { SetMetadata } from '@nestjs/common';

/** By this the lineage finds the routes whose answers carry figures of the animals in `items`, or of the `young` of a clutch. */
export const figuresInAnswer = Symbol('figures in the answer');

/** Lets the answer of a route that makes animals carry their figures: the lineage adds them once the change is committed. */
export const TellsFigures = (): MethodDecorator => SetMetadata(figuresInAnswer, true);
