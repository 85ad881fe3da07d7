package org.holdproof.core.log;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class TraceTest {
    private static final Trace TRACE = new Trace("core", new long[] {10, 20, 30}, new double[] {1, 2, 3});

    @Test
    void aPartHasBothItsEndsAndMayBeOpen() {
        assertThat(TRACE.between(10, 20).size()).isEqualTo(2);
        assertThat(TRACE.between(11, 29).size()).isEqualTo(1);
        assertThat(TRACE.between(31, 40).isEmpty()).isTrue();
        assertThat(TRACE.between(20, Long.MAX_VALUE).size()).isEqualTo(2);
        assertThat(TRACE.between(Long.MIN_VALUE, Long.MAX_VALUE).size()).isEqualTo(3);
    }

    @Test
    void theFirstReadingAtOrAfterAnInstant() {
        assertThat(TRACE.indexFrom(10)).isZero();
        assertThat(TRACE.indexFrom(11)).isEqualTo(1);
        assertThat(TRACE.indexFrom(31)).isEqualTo(3);
    }
}
