package org.holdproof.core.log;

/** The order in which an all-figures date such as {@code 03/04/2031} is written. */
public enum DateOrder {
    DAY_MONTH_YEAR,
    MONTH_DAY_YEAR,
    YEAR_MONTH_DAY
}
