package ebblight.core.tide;

import ebblight.core.numeric.Pieces;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The constituents this program can predict, by name. Arguments after Schureman, SP 98, table 2, and for those he lacks
 * after the standard list of the IHO's Tidal Committee (2017); compounds by what their names say.
 */
final class Constituents {

    /** Name, multiples of T s h p p₁, constant in degrees, node, power of the node where it is not 1. */
    private static final String POTENTIAL =
            """
            SA 0 0 1 0 0 0 NONE
            SAP 0 0 1 0 -1 0 NONE
            SSA 0 0 2 0 0 0 NONE
            MM 0 1 0 -1 0 0 MM
            MF 0 2 0 0 0 0 MF
            MTM 0 3 0 -1 0 0 MF
            MSQM 0 4 -2 0 0 0 MF
            ALP1 1 -5 3 1 0 90 O1
            2Q1 1 -4 1 2 0 90 O1
            SIGMA1 1 -4 3 0 0 90 O1
            Q1 1 -3 1 1 0 90 O1
            RHO 1 -3 3 -1 0 90 O1
            O1 1 -2 1 0 0 90 O1
            TAU1 1 -2 3 0 0 -90 K1
            BET1 1 -1 -1 1 0 -90 O1
            M1 1 -1 1 0 0 -90 M1
            CHI1 1 -1 3 -1 0 -90 J1
            PI1 1 0 -2 0 1 90 NONE
            P1 1 0 -1 0 0 90 NONE
            S1 1 0 0 0 0 0 NONE
            S1P 1 0 0 0 1 -90 NONE
            K1 1 0 1 0 0 -90 K1
            PSI1 1 0 2 0 -1 -90 NONE
            PHI1 1 0 3 0 0 -90 NONE
            THETA1 1 1 -1 1 0 -90 J1
            J1 1 1 1 -1 0 -90 J1
            OO1 1 2 1 0 0 -90 OO1
            OQ2 2 -5 2 3 0 0 M2
            EPS2 2 -5 4 1 0 0 M2
            2N2 2 -4 2 2 0 0 M2
            MU2 2 -4 4 0 0 0 M2
            N2 2 -3 2 1 0 0 M2
            NU2 2 -3 4 -1 0 0 M2
            GAMMA2 2 -2 0 2 0 180 M2
            ALPHA2 2 -2 1 0 1 180 M2
            M2 2 -2 2 0 0 0 M2
            H2 2 -2 3 0 -1 0 M2
            LAM2 2 -1 0 1 0 180 M2
            L2 2 -1 2 -1 0 180 L2
            T2 2 0 -1 0 1 0 NONE
            S2 2 0 0 0 0 0 NONE
            R2 2 0 1 0 -1 180 NONE
            K2 2 0 2 0 0 0 K2
            ETA2 2 1 2 -1 0 0 ETA2
            M3 3 -3 3 0 0 0 M2 1.5
            S3 3 0 0 0 0 0 NONE
            """;

    /** Name, then how often each other constituent stands in it. */
    private static final String COMPOUNDS =
            """
            MSF S2 -M2
            SO1 S2 -O1
            NO1 N2 -O1
            MP1 M2 -P1
            TK1 T2 -K1
            RP1 R2 -P1
            KP1 K2 -P1
            2PO1 2*P1 -O1
            2NS2 2*N2 -S2
            MLN2S2 M2 L2 N2 -2*S2
            MNS2 M2 N2 -S2
            2ML2S2 2*M2 L2 -2*S2
            2MS2K2 2*M2 S2 -2*K2
            MKL2S2 M2 K2 L2 -2*S2
            OP2 O1 P1
            MA2 M2 -SA
            MB2 M2 SA
            MKS2 M2 K2 -S2
            M2KS2 M2 2*K2 -2*S2
            2SNMK2 2*S2 N2 -M2 -K2
            2KMSN2 2*K2 M2 -S2 -N2
            MSN2 M2 S2 -N2
            2SM2 2*S2 -M2
            SKM2 S2 K2 -M2
            NO3 N2 O1
            MO3 M2 O1
            2MK3 2*M2 -K1
            SO3 S2 O1
            MK3 M2 K1
            SK3 S2 K1
            N4 2*N2
            3MS4 3*M2 -S2
            2MLS4 2*M2 L2 -S2
            MN4 M2 N2
            M4 2*M2
            SN4 S2 N2
            ML4 M2 L2
            MS4 M2 S2
            MK4 M2 K2
            SL4 S2 L2
            S4 2*S2
            SK4 S2 K2
            MNO5 M2 N2 O1
            2MO5 2*M2 O1
            3MP5 3*M2 -P1
            MNK5 M2 N2 K1
            2MP5 2*M2 P1
            2MK5 2*M2 K1
            MSK5 M2 S2 K1
            3KM5 K2 K1 M2
            2SK5 2*S2 K1
            2NMLS6 2*N2 M2 L2 -S2
            2MLNS6 2*M2 L2 N2 -S2
            3MLS6 3*M2 L2 -S2
            2NM6 2*N2 M2
            2MN6 2*M2 N2
            M6 3*M2
            MSN6 M2 S2 N2
            2ML6 2*M2 L2
            2MS6 2*M2 S2
            2MK6 2*M2 K2
            MSL6 M2 S2 L2
            2SM6 2*S2 M2
            MSK6 M2 S2 K2
            S6 3*S2
            2MNO7 2*M2 N2 O1
            2NMK7 2*N2 M2 K1
            2MSO7 2*M2 S2 O1
            3MK7 3*M2 K1
            MSKO7 M2 S2 K2 O1
            2MN8 2*M2 2*N2
            3MN8 3*M2 N2
            4MLS8 4*M2 L2 -S2
            M8 4*M2
            2MSN8 2*M2 S2 N2
            3ML8 3*M2 L2
            3MS8 3*M2 S2
            3MK8 3*M2 K2
            2MSL8 2*M2 S2 L2
            2MS8 2*M2 2*S2
            2MSK8 2*M2 S2 K2
            2M2NK9 2*M2 2*N2 K1
            3MNK9 3*M2 N2 K1
            4MK9 4*M2 K1
            3MSK9 3*M2 S2 K1
            4MN10 4*M2 N2
            M10 5*M2
            3MNS10 3*M2 N2 S2
            4MS10 4*M2 S2
            3MSL10 3*M2 S2 L2
            3M2S10 3*M2 2*S2
            4MSK11 4*M2 S2 K1
            4MNS12 4*M2 N2 S2
            5MS12 5*M2 S2
            4MSL12 4*M2 S2 L2
            4M2S12 4*M2 2*S2
            """;

    /** Other names of the same, in capitals. */
    private static final String ALIASES =
            """
            SA_KV SAP
            S1_KV S1P
            A7 MTM
            MFM MTM
            SGM SIGMA1
            SIG1 SIGMA1
            RHO1 RHO
            THE1 THETA1
            OQ2_KV OQ2
            EP2 EPS2
            H1 ALPHA2
            M(KS)2 H2
            LAMBDA2 LAM2
            LDA2 LAM2
            KJ2 ETA2
            M2(KS)2 M2KS2
            2SN(MK)2 2SNMK2
            2KM(SN)2 2KMSN2
            2MNLS6 2MLNS6
            2(MN)8 2MN8
            2(MS)8 2MS8
            """;

    private static final Map<String, Constituent> BY_NAME = table();

    private Constituents() {}

    /** The constituent of this name in any of its spellings; empty when it is not known. */
    static Optional<Constituent> named(String name) {
        return Optional.ofNullable(BY_NAME.get(name.trim().toUpperCase(Locale.ROOT)));
    }

    /** All names, aliases among them. */
    static Set<String> names() {
        return BY_NAME.keySet();
    }

    private static Map<String, Constituent> table() {
        Map<String, Constituent> table = new LinkedHashMap<>();
        for (String[] words : rows(POTENTIAL)) {
            double[] multiples = new double[5];
            for (int i = 0; i < multiples.length; i++) {
                multiples[i] = Double.parseDouble(words[1 + i]);
            }
            double power = words.length > 8 ? Double.parseDouble(words[8]) : 1;
            table.put(
                    words[0],
                    Constituent.of(words[0], multiples, Double.parseDouble(words[6]), Node.valueOf(words[7]), power));
        }
        for (String[] words : rows(COMPOUNDS)) {
            Constituent compound = Constituent.compound(words[0]);
            for (int i = 1; i < words.length; i++) {
                compound = plus(compound, words[i], table);
            }
            table.put(words[0], compound);
        }
        for (String[] words : rows(ALIASES)) {
            table.put(words[0], table.get(words[1]));
        }
        return table;
    }

    /** Adds {@code 2*N2}, {@code -S2} or {@code K1}. */
    private static Constituent plus(Constituent compound, String word, Map<String, Constituent> table) {
        int sign = word.startsWith("-") ? -1 : 1;
        String rest = sign < 0 ? word.substring(1) : word;
        int star = rest.indexOf('*');
        int times = star < 0 ? 1 : Integer.parseInt(rest.substring(0, star));
        Constituent part = table.get(rest.substring(star + 1));
        if (part == null) {
            throw new IllegalStateException("the table of compounds uses " + rest + " before it is there");
        }
        return compound.plus(sign * times, part);
    }

    private static String[][] rows(String text) {
        List<String> lines = Pieces.of(text, "\n");
        String[][] rows = new String[lines.size()][];
        for (int i = 0; i < rows.length; i++) {
            rows[i] = Pieces.of(lines.get(i), " ").toArray(new String[0]);
        }
        return rows;
    }
}
