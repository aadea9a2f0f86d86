import type { SheetOptions, SheetParams } from '../protocol.ts';

/** What a request for a sheet asks for. */
export function sheetOptionsOf({ size, today, clock, whatIf, map }: SheetParams): SheetOptions {
  return {
    ...(size === undefined ? {} : { size }),
    ...(today === undefined ? {} : { today }),
    ...(clock === undefined ? {} : { clock }),
    ...(whatIf === undefined ? {} : { whatIf }),
    ...(map === undefined ? {} : { map }),
  };
}
