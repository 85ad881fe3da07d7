package org.holdproof.cli.demo;

import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;

/**
 * An invented kitchen and four batches of February 2031. The logs are simulated: conduction in a slab, sensor noise from
 * fixed seeds, one reading a minute. No such kitchen, logger or batch exists, and nothing here is evidence of anything.
 */
public final class DemoKitchen {
    /** What every demo output says of itself. */
    public static final String STATEMENT =
            "Simulated data: an invented kitchen, conduction in a slab, noise from fixed seeds.";

    /** When the demo's reports claim to be sealed: after the invented cooks, on no clock of this world. */
    public static final Instant SEALED_AT = Instant.parse("2031-03-01T15:00:00Z");

    /** Who the demo's seal names. */
    public static final String SIGNER = "Quillmoor Yard Kitchen (demo key, proves nothing)";

    /** What lies beside the demo's files. */
    public static final String ABOUT =
            """
            This folder was written by "holdproof demo" and is overwritten by the next one.

            Everything in it is invented. No such kitchen, logger or batch exists; the year is 2031. The logs are a
            simulation: conduction in a slab of meat of the stated thickness (conductivity 0.47 W/(m K), diffusivity
            1.30e-7 m2/s), put from the smoker into the bath and from the bath into ice slush, read once a minute, with
            sensor noise of 0.05 degrees Celsius (standard deviation) from fixed seeds.

            1-smoked-then-bagged  smoked 6 h, bagged, 14 h in a bath of 155 F, iced, stored
            2-low-bath            24 h in a bath of 50 C
            3-late-chill          cooked at 62 C, then left on the bench for 170 minutes before the ice
            4-probe-gap           cooked at 145 F; the logger recorded nothing for the decisive two hours

            demo-key.p12 seals the reports; its passphrase lies beside it in demo-key.passphrase.txt, which one never
            does with a real key. The time of the seal, 1 March 2031, is invented like the rest.
            """;

    private static final ZoneId ZONE = ZoneId.of("America/Chicago");
    private static final DateTimeFormatter LOCAL = DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HH:mm", Locale.ROOT);

    private static final double ROOM = 21;
    private static final double FRIDGE = 4;
    private static final double SLUSH = 0.8;

    /** Surface coefficients in W/(m² K): still air, air of a smoker, stirred bath, ice slush, chilled store. */
    private static final double STILL_AIR = 8;

    private static final double SMOKER_AIR = 18;
    private static final double STIRRED_BATH = 200;
    private static final double ICE_SLUSH = 120;
    private static final double STORE_AIR = 10;

    private DemoKitchen() {}

    /** The four batches: one for each way a verdict can fall, and one for each way it can fall short. */
    public static List<DemoBatch> batches() {
        return List.of(smokedThenBagged(), lowBath(), lateChill(), probeGap());
    }

    private static DemoBatch smokedThenBagged() {
        ZonedDateTime start = at(10, 12, 0);
        // Evaporation holds the bare meat's surface near the wet-bulb temperature, about 68 °C in air of 110 °C.
        List<Surroundings> course = List.of(
                new Surroundings(360, 68, SMOKER_AIR, 110, ROOM),
                new Surroundings(15, ROOM, STILL_AIR, ROOM, 68.3),
                new Surroundings(840, 68.3, STIRRED_BATH, ROOM, 68.3),
                new Surroundings(5, ROOM, STILL_AIR, ROOM, 68.3),
                new Surroundings(200, SLUSH, ICE_SLUSH, ROOM, ROOM),
                new Surroundings(100, 2, STORE_AIR, 2, ROOM));
        Readings readings = new Readings(start, 60, FRIDGE, course, Readings.Lost.NOTHING, 11);
        String stages = stages(
                stage("smoke", start, 0, 360, "230 °F"),
                moment("bag", start, 368),
                stage("bath", start, 375, 1215, "155 °F"),
                stage("chill", start, 1220, 1420, "33 °F"),
                stage("store", start, 1420, 1519, "36 °F"));
        return new DemoBatch(
                "1-smoked-then-bagged",
                "brisket, 6 h of smoke, bagged, 14 h at 155 °F, iced",
                LogLayout.PREAMBLE_FAHRENHEIT.write(readings),
                record(
                        "31-0210-A",
                        "us-fsis-2021",
                        "Beef brisket, flat",
                        "beef",
                        "flat",
                        12,
                        60,
                        "2.6 kg",
                        "",
                        stages,
                        end(start, 1519, "in store")));
    }

    private static DemoBatch lowBath() {
        ZonedDateTime start = at(12, 10, 0);
        List<Surroundings> course = List.of(
                new Surroundings(1440, 50, STIRRED_BATH, ROOM, 50),
                new Surroundings(5, ROOM, STILL_AIR, ROOM, 50),
                new Surroundings(180, SLUSH, ICE_SLUSH, ROOM, ROOM));
        Readings readings = new Readings(start, 50, FRIDGE, course, Readings.Lost.NOTHING, 12);
        String stages = stages(
                moment("bag", start, 0),
                stage("bath", start, 0, 1440, "50 °C"),
                stage("chill", start, 1445, 1624, "1 °C"));
        return new DemoBatch(
                "2-low-bath",
                "chuck, 24 h in a bath of 50 °C",
                LogLayout.SEMICOLON_CELSIUS.write(readings),
                record(
                        "31-0212-B",
                        "us-fsis-2021",
                        "Beef chuck, sliced thick",
                        "beef",
                        "chuck",
                        15,
                        50,
                        "1.4 kg",
                        ", \"dates\": \"dmy\"",
                        stages,
                        end(start, 1624, "discarded")));
    }

    private static DemoBatch lateChill() {
        ZonedDateTime start = at(17, 9, 0);
        List<Surroundings> course = List.of(
                new Surroundings(360, 62, STIRRED_BATH, ROOM, 62),
                new Surroundings(170, ROOM, STILL_AIR, ROOM, ROOM),
                new Surroundings(240, SLUSH, ICE_SLUSH, ROOM, ROOM));
        Readings readings = new Readings(start, 65, FRIDGE, course, Readings.Lost.NOTHING, 13);
        String stages = stages(
                moment("bag", start, 0),
                stage("bath", start, 0, 360, "62 °C"),
                stage("chill", start, 360, 769, "1 °C"));
        return new DemoBatch(
                "3-late-chill",
                "pork loin, cooked well, then left on the bench for 170 min",
                LogLayout.ELAPSED_TABS.write(readings),
                record(
                        "31-0217-C",
                        "us-food-code-2022",
                        "Pork loin",
                        "pork",
                        "loin",
                        6,
                        65,
                        "1.8 kg",
                        ", \"start\": \"" + LOCAL.format(start) + "\"",
                        stages,
                        end(start, 769, "discarded")));
    }

    private static DemoBatch probeGap() {
        ZonedDateTime start = at(24, 11, 0);
        List<Surroundings> course = List.of(
                new Surroundings(210, 63, STIRRED_BATH, ROOM, 63),
                new Surroundings(3, ROOM, STILL_AIR, ROOM, 63),
                new Surroundings(180, SLUSH, ICE_SLUSH, ROOM, ROOM));
        Readings readings = new Readings(start, 55, FRIDGE, course, new Readings.Lost(84, 209), 14);
        String stages = stages(
                moment("bag", start, 0),
                stage("bath", start, 0, 210, "145 °F"),
                stage("chill", start, 213, 392, "33 °F"));
        return new DemoBatch(
                "4-probe-gap",
                "turkey breast, the logger silent over the decisive two hours",
                LogLayout.TWELVE_HOUR_FAHRENHEIT.write(readings),
                record(
                        "31-0224-D",
                        "us-fsis-2021",
                        "Turkey breast",
                        "turkey",
                        "breast",
                        2,
                        55,
                        "1.1 kg",
                        ", \"dates\": \"mdy\"",
                        stages,
                        end(start, 392, "discarded")));
    }

    private static ZonedDateTime at(int day, int hour, int minute) {
        return ZonedDateTime.of(2031, 2, day, hour, minute, 0, 0, ZONE);
    }

    private static String record(
            String batch,
            String authority,
            String name,
            String species,
            String cut,
            int fatPercent,
            int thicknessMillimetres,
            String weight,
            String logAnswers,
            String stages,
            String end) {
        return """
                {
                  "batch": "%s",
                  "authority": "%s",
                  "kitchen": {
                    "name": "Quillmoor Yard Kitchen (invented)",
                    "place": "Quillmoor",
                    "timeZone": "%s"
                  },
                  "product": {
                    "name": "%s",
                    "species": "%s",
                    "cut": "%s",
                    "form": "intact",
                    "fat": "%d %%",
                    "shape": "slab",
                    "thickness": "%d mm",
                    "weight": "%s"
                  },
                  "instrument": {
                    "id": "bench logger 2 (simulated)",
                    "tolerance": "0.5 °C",
                    "lastCheck": {"date": "2031-02-03", "method": "ice point", "reading": "0.0 °C"},
                    "checkEvery": "30 d"
                  },
                  "columns": {"core": ["Core"], "bath": ["Bath"], "air": ["Smoker"]},
                  "log": {"timeZone": "%s"%s},
                  "stages": [
                %s
                  ],
                  "end": %s,
                  "roles": {"operator": "night cook", "reviewer": "kitchen manager"}
                }
                """
                .formatted(
                        batch,
                        authority,
                        ZONE,
                        name,
                        species,
                        cut,
                        fatPercent,
                        thicknessMillimetres,
                        weight,
                        ZONE,
                        logAnswers,
                        stages,
                        end);
    }

    private static String stages(String... stages) {
        return "    " + String.join(",\n    ", stages);
    }

    private static String stage(String name, ZonedDateTime start, int fromMinute, int toMinute, String setPoint) {
        return "{\"stage\": \"%s\", \"from\": \"%s\", \"to\": \"%s\", \"setPoint\": \"%s\"}"
                .formatted(
                        name,
                        LOCAL.format(start.plusMinutes(fromMinute)),
                        LOCAL.format(start.plusMinutes(toMinute)),
                        setPoint);
    }

    private static String end(ZonedDateTime start, int minute, String how) {
        return "{\"how\": \"%s\", \"at\": \"%s\"}".formatted(how, LOCAL.format(start.plusMinutes(minute)));
    }

    private static String moment(String name, ZonedDateTime start, int minute) {
        return "{\"stage\": \"%s\", \"at\": \"%s\"}".formatted(name, LOCAL.format(start.plusMinutes(minute)));
    }
}
