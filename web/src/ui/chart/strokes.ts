// SPDX-License-Identifier: MIT
// Small strokes that several painters of a plot share: hatches, verticals, words on a rim of the ground. In canvas
// pixels; tokens come as colours.
import { token } from './palette.ts';

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}
export const px = (css: number): number => css * devicePixelRatio;

/** Lines at 45 degrees, nothing beyond the box. */
export function hatched(ctx: CanvasRenderingContext2D, box: Box, colour: string): void {
  const { left, top, width, height } = box;
  ctx.save();
  ctx.beginPath();
  ctx.rect(left, top, width, height);
  ctx.clip();
  ctx.strokeStyle = colour;
  ctx.lineWidth = px(2);
  for (let x = left - height; x < left + width; x += px(9)) {
    ctx.beginPath();
    ctx.moveTo(x, top + height);
    ctx.lineTo(x + height, top);
    ctx.stroke();
  }
  ctx.restore();
}
export interface Stroke {
  readonly colour: string;
  readonly width: number;
  readonly dash?: readonly number[];
}
export function line(
  ctx: CanvasRenderingContext2D,
  [x1, y1]: readonly [number, number],
  [x2, y2]: readonly [number, number],
  how: Stroke,
): void {
  ctx.save();
  ctx.strokeStyle = how.colour;
  ctx.lineWidth = px(how.width);
  ctx.setLineDash((how.dash ?? []).map(px));
  ctx.beginPath();
  ctx.moveTo(x1, y1);
  ctx.lineTo(x2, y2);
  ctx.stroke();
  ctx.restore();
}
export const labelFont = (): string => `600 ${px(13)}px "Atkinson Hyperlegible Next", system-ui`;

/** Readable over a trace: a rim of the plot's ground around it. */
export function rimmed(
  ctx: CanvasRenderingContext2D,
  text: string,
  [x, y]: readonly [number, number],
  { colour, align }: { readonly colour: string; readonly align: CanvasTextAlign },
): void {
  ctx.save();
  ctx.font = labelFont();
  ctx.textAlign = align;
  ctx.lineJoin = 'round';
  ctx.strokeStyle = token('--card');
  ctx.lineWidth = px(4);
  ctx.strokeText(text, x, y);
  ctx.fillStyle = colour;
  ctx.fillText(text, x, y);
  ctx.restore();
}
