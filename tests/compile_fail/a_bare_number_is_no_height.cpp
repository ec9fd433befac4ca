// SPDX-License-Identifier: GPL-3.0-or-later
// REFUSED: conversion from 'double' to non-scalar type
#include "staddle/units/units.h"

#ifdef BROKEN
staddle::Height height = 63.7;
#else
staddle::Height height = staddle::feet(63.7);
#endif
