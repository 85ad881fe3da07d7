package org.holdproof.core.input;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class UnreadableInputTest {
    @Test
    void theMessageIsMadeOfItsParts() {
        UnreadableInputException fault = Place.file("cook.json")
                .character(3, 9)
                .member("product")
                .item(0)
                .fault("'lamb\u001B[2J'", "one of beef, pork", "Choose the one that fits.");

        assertThat(fault)
                .hasMessage("cook.json, line 3, column 9, at /product/0: found 'lamb\uFFFD[2J'; expected one of beef,"
                        + " pork. Choose the one that fits.");
        assertThat(fault.place().line()).hasValue(3);
        assertThat(fault.place().character()).hasValue(9);
        assertThat(fault.place().pointer()).contains("/product/0");
        assertThat(fault.found()).isEqualTo("'lamb\uFFFD[2J'");
        assertThat(fault.expected()).isEqualTo("one of beef, pork");
        assertThat(fault.remedy()).isEqualTo("Choose the one that fits.");
    }

    @Test
    void aTablesCellIsNamedByItsColumn() {
        assertThat(Place.file("log.csv").line(7).column(2).words()).isEqualTo("log.csv, line 7, column 2");
        assertThat(Place.file("log.csv").line(0).column(0).words()).isEqualTo("log.csv");
        assertThat(Place.file("cooling.csv").line(2).column("max_minutes").words())
                .isEqualTo("cooling.csv, line 2, column max_minutes");
    }

    @Test
    void aPointerEscapesItsSigns() {
        assertThat(Place.file("a").member("x/y~z").pointer()).contains("/x~1y~0z");
    }
}
