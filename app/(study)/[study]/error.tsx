'use client';

/** Within a study, so that the ways to its other screens stay. */
export { default } from '@/app/error';
