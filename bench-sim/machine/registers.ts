// SPDX-License-Identifier: MIT
// Data-space addresses and vector numbers of the ATmega328P (data sheet, register summary; avr/iom328p.h).
// Names are those of the data sheet. Nothing but numbers here.

export const PINB = 0x23;
export const PINC = 0x26;
export const PIND = 0x29;
export const TIFR0 = 0x35;
export const TIFR1 = 0x36;
export const TIFR2 = 0x37;
export const PCIFR = 0x3b;
export const EIFR = 0x3c;
export const EIMSK = 0x3d;
export const EECR = 0x3f;
export const EEDR = 0x40;
export const EEARL = 0x41;
export const EEARH = 0x42;
export const GTCCR = 0x43;
export const SPCR = 0x4c;
export const SPSR = 0x4d;
export const SPDR = 0x4e;
export const SMCR = 0x53;
export const MCUSR = 0x54;
export const SPL = 0x5d;
export const SREG = 0x5f;
export const WDTCSR = 0x60;
export const PCICR = 0x68;
export const EICRA = 0x69;
export const PCMSK0 = 0x6b;
export const TIMSK0 = 0x6e;
export const TIMSK1 = 0x6f;
export const TIMSK2 = 0x70;
export const ADCL = 0x78;
export const ADCH = 0x79;
export const ADCSRA = 0x7a;
export const ADCSRB = 0x7b;
export const ADMUX = 0x7c;
export const TCCR1A = 0x80;
export const TCNT1L = 0x84;
export const ICR1L = 0x86;
export const OCR1AL = 0x88;
export const OCR1BL = 0x8a;
export const UCSR0A = 0xc0;
export const UCSR0B = 0xc1;
export const UCSR0C = 0xc2;
export const UBRR0L = 0xc4;
export const UBRR0H = 0xc5;
export const UDR0 = 0xc6;

/** Highest address of the 2 KiB of RAM. */
export const RAMEND = 0x8ff;
export const RAMSTART = 0x100;
export const FLASH_BYTES = 0x8000;

export const vectors = {
  int0: 1,
  int1: 2,
  pinChange0: 3,
  pinChange1: 4,
  pinChange2: 5,
  watchdog: 6,
  timer2CompareA: 7,
  timer2CompareB: 8,
  timer2Overflow: 9,
  timer1Capture: 10,
  timer1CompareA: 11,
  timer1CompareB: 12,
  timer1Overflow: 13,
  timer0CompareA: 14,
  timer0CompareB: 15,
  timer0Overflow: 16,
  spi: 17,
  usartReceive: 18,
  usartEmpty: 19,
  usartTransmit: 20,
  converter: 21,
  eepromReady: 22,
} as const;
export type VectorName = keyof typeof vectors;
export const VECTOR_COUNT = 26;
