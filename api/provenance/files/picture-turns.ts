import { Injectable } from '@nestjs/common';
import { Turns } from '../../platform/gate.ts';

/** Pictures that are worked on at once in this copy of the service; each may take some hundred megabytes. */
const picturesAtOnce = 2;

/** Whose turn it is to work on a picture. */
@Injectable()
export class PictureTurns extends Turns {
  constructor() {
    super(picturesAtOnce);
  }
}
