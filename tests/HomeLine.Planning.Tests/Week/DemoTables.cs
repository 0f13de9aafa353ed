namespace HomeLine.Planning.Tests.Week;

/// <summary>The demonstration week as tables: invented people, an invented county, fixed for ever.</summary>
internal static class DemoTables
{
    /// <summary>Nurse, home x and y, shifts, skills, states, traits.</summary>
    public const string Nurses = """
        N1 | Juniper Brasslock | 23.0 13.0 | Mon Tue Wed Thu Fri 08:00-16:30 | FD LAB PICC PN PORT REC REM SOC TUN | Marrow Westling | female language:es
        N2 | Rowan Thistlequay | 41.0 11.0 | Mon Tue Wed 08:00-16:30 | INO LAB PICC PN PORT REC SOC TUN | Marrow | male allergy:cat
        N3 | Sorrel Mudlark | 29.0 35.0 | Mon Tue Thu Fri 08:00-16:30; Sat Sun 09:00-12:00 | FD LAB PICC PN PORT REC SOC TUN | Marrow | female
        N4 | Tansy Oxbowe | 25.0 12.5 | Tue Thu 08:00-14:30 | LAB PEDS PICC PN TUN | Marrow | female
        N5 | Linden Pennywhirl | 15.5 19.5 | Mon Tue Thu 07:30-15:30 | LAB PICC TUN | Marrow | male
        N6 | Bramble Quickstile | 22.0 15.0 | Tue Wed Thu Fri 13:00-21:00; Sat 09:00-13:00 | FD LAB PICC PN PORT REC REM SOC TUN | Marrow Westling | male language:es
        N7 | Saffron Gullwing | 39.0 9.0 | Wed Fri 08:00-18:00 | FD IG INO LAB PICC PN PORT TUN | Marrow | female
        N8 | Hyssop Lanternlow | 26.0 15.0 | Tue Thu 09:00-13:30 | BCX FD IG INO LAB PEDS PICC PN PORT REC REM SOC TUN | Marrow Westling | female language:vi
        """;

    /// <summary>Patient, name, town, home x and y.</summary>
    public const string Patients = """
        01 | Anise Kettledown | DUN | 23.6 | 14.4
        02 | Bracken Rumblefold | DUN | 24.1 | 13.0
        03 | Clover Zigzagby | DUN | 24.8 | 15.0
        04 | Dittany Gigglesby | DUN | 22.6 | 13.7
        05 | Eyebright Noodleham | DUN | 25.4 | 13.1
        06 | Fennel Underbutton | DUN | 23.5 | 15.8
        07 | Gorse Crumpetley | DUN | 23.1 | 12.2
        08 | Hawthorn Jamjarrow | DUN | 26.0 | 14.7
        09 | Ivywren Gorsebell | DUN | 21.9 | 14.9
        10 | Jasperine Nimblegate | DUN | 25.0 | 11.8
        11 | Kelp Umberlidge | DUN | 24.8 | 16.4
        12 | Larkspur Cogglewick | DUN | 21.7 | 12.7
        13 | Mallow Jinglefen | DUN | 26.7 | 13.4
        14 | Nettle Quaverley | DUN | 22.4 | 16.4
        15 | Orris Yawnley | DUN | 23.6 | 11.0
        16 | Pimpernel Flapstone | DUN | 26.4 | 16.0
        17 | Quince Cloudbutton | DUN | 20.8 | 14.1
        18 | Ramsons Jollyspoon | DUN | 26.3 | 11.7
        19 | Samphire Quibblestone | DUN | 23.9 | 17.4
        20 | Teasel Yonderbell | DUN | 21.8 | 11.4
        21 | Umber Fumblegrove | QUI | 39.6 | 10.4
        22 | Valerian Mumblecote | QUI | 40.1 | 9.1
        23 | Woodruff Thimblegarth | QUI | 40.7 | 10.9
        24 | Yarrow Bobbinhurst | QUI | 38.6 | 9.8
        25 | Zinnia Itchenbell | QUI | 41.3 | 9.1
        26 | Aldersy Fiddlewick | QUI | 39.5 | 11.7
        27 | Betony Muddlestone | QUI | 39.1 | 8.3
        28 | Cicelia Tanglewater | QUI | 41.9 | 10.7
        29 | Damson Bumblecroft | QUI | 38.0 | 10.8
        30 | Elderby Inchmallow | QUI | 41.0 | 7.9
        31 | Feverfew Pepperfold | QUI | 40.7 | 12.3
        32 | Galangal Whifflemoor | FER | 14.6 | 20.4
        33 | Heatherly Eggsworthy | FER | 15.1 | 19.1
        34 | Inkberry Brasspin | FER | 15.7 | 20.9
        35 | Junipera Icklebrook | FER | 13.6 | 19.8
        36 | Knapweed Puddlewright | FER | 16.4 | 19.1
        37 | Lovage Wobblestone | FER | 14.5 | 21.7
        38 | Medlar Elbowmere | FER | 14.1 | 18.3
        39 | Nasturt Lollopfield | MOS | 29.6 | 34.4
        40 | Oxlip Snufflebrook | MOS | 30.1 | 33.0
        41 | Parslow Acornby | MOS | 30.8 | 35.0
        42 | Quillwort Hushmere | MOS | 28.5 | 33.7
        43 | Rushlight Emberlatch | MOS | 31.5 | 33.1
        44 | Sedge Lanternby | MOS | 29.5 | 35.9
        45 | Tormentil Sprocketby | MOS | 29.0 | 32.1
        46 | Umbel Applecrank | MOS | 32.1 | 34.8
        47 | Vetch Hobblethwick | MOS | 27.8 | 34.9
        48 | Willowherb Otterwink | UND | 43.5 | 37.4
        49 | Xylem Vinegarth | UND | 44.1 | 35.9
        50 | Yewling Drizzlecote | UND | 44.9 | 38.1
        51 | Zephyrine Inkwhistle | UND | 42.4 | 36.7
        52 | Aspenny Hazelquill | UND | 45.6 | 36.0
        53 | Bilberry Oddlington | WES | 4.7 | 16.3
        54 | Camomile Velvetoak | WES | 5.1 | 15.2
        55 | Dogrose Doodlebank | WES | 5.6 | 16.8
        56 | Emberly Knucklebury | WES | 3.8 | 15.8
        57 | Filbert Ripplecomb | WES | 6.2 | 15.2
        58 | Goosegrass Zestwick | SKE | 55.7 | 20.3
        59 | Hornbeam Grumbleheath | SKE | 56.1 | 19.3
        60 | Indigo Dapplethorn | SKE | 56.6 | 20.7
        """;

    /// <summary>Patient, care, days of the window, earliest and latest start of the day where tied to one, minutes in the home, skills.</summary>
    public const string Needs = """
        01 | weekly bundle | Mon-Wed |  |  | 60 | PICC
        02 | weekly bundle | Fri-Sun |  |  | 60 | PICC
        03 | weekly bundle | Mon-Wed |  |  | 75 | PICC PN
        04 | trough + weekly bundle | Tue | 09:30 | 09:55 | 60 | PICC LAB
        05 | weekly bundle | Tue |  |  | 60 | PICC
        06 | gauze change | Tue |  |  | 50 | PICC
        06 | gauze change | Thu |  |  | 50 | PICC
        06 | gauze change | Sat |  |  | 50 | PICC
        07 | site check + labs + connector | Tue-Thu |  |  | 45 | TUN PN LAB
        08 | port needle + dressing + connector | Mon-Tue |  |  | 75 | PORT
        09 | first dressing change | Mon |  |  | 60 | PICC
        10 | weekly bundle | Tue-Thu |  |  | 75 | PICC PORT
        12 | weekly bundle before travel | Mon-Tue |  |  | 60 | PICC
        14 | weekly bundle | Wed-Fri |  |  | 60 | PICC
        15 | weekly bundle | Wed-Fri |  |  | 60 | PICC
        16 | weekly bundle | Mon-Wed | 09:00 | 15:00 | 60 | PICC
        17 | weekly bundle + recertification assessment | Wed-Thu |  |  | 100 | TUN PN REC
        18 | weekly bundle | Tue-Wed |  |  | 60 | PICC
        19 | dose | Mon | 09:00 | 10:50 | 50 | PICC
        19 | dose | Tue | 09:00 | 10:50 | 50 | PICC
        19 | dose | Wed | 09:00 | 10:50 | 50 | PICC
        19 | last dose + line removal | Thu | 09:00 | 10:50 | 80 | PICC REM
        20 | immunoglobulin, access + stay + de-access | Wed | 09:00 | 11:00 | 330 | PORT IG
        21 | weekly bundle | Mon |  |  | 90 | TUN PORT PN
        22 | weekly bundle | Thu-Sat |  |  | 60 | PICC
        23 | cassette + set + connectors | Mon |  |  | 75 | PICC INO
        23 | cassette + set + weekly bundle | Thu |  |  | 90 | PICC INO
        24 | weekly bundle | Mon-Wed |  |  | 60 | PICC
        25 | monthly port flush | Mon-Sat |  |  | 40 | PORT
        26 | labs only | Mon |  |  | 30 | PICC LAB
        26 | labs + weekly bundle | Thu |  |  | 75 | PICC LAB
        28 | weekly bundle | Mon-Tue |  |  | 75 | TUN PN
        29 | weekly bundle | Mon-Wed |  |  | 90 | PORT PN
        30 | re-offer dressing | Mon |  |  | 70 | PICC
        31 | weekly bundle (missed Fri) | Mon |  |  | 60 | PICC
        32 | weekly bundle | Mon |  |  | 60 | PICC
        33 | weekly bundle | Mon-Wed |  |  | 75 | PICC
        34 | weekly bundle | Tue-Thu |  |  | 75 | PICC PN LAB
        35 | weekly bundle | Wed-Fri |  |  | 60 | PICC
        36 | trough + weekly bundle | Thu | 13:30 | 13:50 | 60 | PICC LAB
        37 | weekly bundle | Thu-Sat |  |  | 75 | PICC
        38 | weekly bundle | Mon-Tue |  |  | 75 | PICC PORT
        39 | weekly bundle | Tue or Thu | 09:00 | 12:30 | 90 | TUN PN PEDS
        40 | weekly bundle | Mon-Tue |  |  | 90 | TUN PN PEDS
        41 | weekly bundle | Mon |  |  | 60 | PICC
        42 | trough + weekly bundle | Wed | 08:30 | 08:50 | 60 | PICC LAB
        43 | weekly bundle | Wed-Fri |  |  | 75 | PICC PORT
        44 | weekly bundle | Tue-Thu |  |  | 75 | TUN PN
        45 | monthly port flush | Mon-Wed |  |  | 40 | PORT
        46 | first dressing change | Mon-Tue |  |  | 60 | PICC
        47 | hydration 2 h | Mon |  |  | 120 | PICC
        47 | hydration 2 h | Wed |  |  | 120 | PICC
        47 | hydration 2 h + weekly bundle | Fri |  |  | 140 | PICC
        48 | weekly bundle | Mon-Wed |  |  | 75 | TUN PN
        49 | weekly bundle | Tue-Thu | 08:00 | 09:30 | 60 | PICC
        50 | weekly bundle | Wed-Thu |  |  | 90 | TUN PORT PN
        51 | weekly bundle | Thu-Sat |  |  | 60 | PICC
        52 | weekly bundle | Wed-Fri |  |  | 75 | PICC PORT
        53 | weekly bundle | Mon-Wed |  |  | 60 | PICC
        54 | PN evening teaching 1 | Tue | 18:00 | 18:30 | 90 | PICC PN
        54 | PN evening teaching 2 | Wed | 18:00 | 18:30 | 90 | PICC PN
        54 | PN teaching 3 + weekly bundle | Thu | 18:00 | 18:30 | 110 | PICC PN
        55 | weekly bundle | Tue-Thu |  |  | 60 | PICC
        56 | weekly bundle | Mon-Wed |  |  | 90 | TUN PORT PN
        57 | trough + weekly bundle | Wed | 11:30 | 11:50 | 60 | PICC LAB
        58 | weekly bundle | Tue-Thu |  |  | 60 | PICC
        59 | weekly bundle | Tue-Thu |  |  | 75 | PICC PN
        60 | immunoglobulin + weekly bundle | Fri | 09:00 | 11:00 | 300 | PICC PORT IG
        """;

    /// <summary>The published plan: day, nurse, starts and patients in order.</summary>
    public const string Published = """
        Mon | N1 | 08:10 P09, 09:38 P19, 11:03 P32, 12:26 P33, 14:04 P38
        Mon | N2 | 08:05 P23, 09:43 P21, 11:36 P26, 12:32 P30, 14:08 P31
        Mon | N3 | 08:08 P47, 10:45 P48, 12:38 P46, 14:01 P41
        Tue | N1 | 08:08 P12, 09:31 P04, 10:56 P06, 12:09 P01
        Tue | N2 | 08:24 P58, 09:46 P59, 11:39 P28
        Tue | N3 | 08:07 P44
        Tue | N4 | 08:30 P40, 10:23 P39, 12:39 P05
        Tue | N6 | 13:26 P55, 14:48 P53, 16:10 P56, 18:03 P54
        Tue | N8 | 09:05 P08, 10:48 P19
        Wed | N1 | 09:00 P19, 11:30 P57, 13:12 P03, 15:00 P16
        Wed | N2 | 08:34 P42, 09:57 P47, 12:24 P45, 13:50 P29
        Wed | N6 | 13:11 P10, 15:00 P16 (escort), 16:26 P18, 18:10 P54
        Wed | N7 | 08:22 P15, 09:46 P20, 15:54 P24
        Thu | N1 | 08:23 P26, 10:16 P19, 12:00 P06, 13:13 P14, 14:39 P07
        Thu | N3 | 08:21 P49, 09:45 P51, 11:12 P50, 13:07 P52
        Thu | N5 | 08:00 P37, 09:40 P35, 13:30 P36
        Thu | N6 | 13:08 P17, 15:21 P34, 18:00 P54
        Thu | N8 | 09:22 P22, 10:46 P23
        Fri | N3 | 08:08 P47, 10:54 P43
        Fri | N7 | 09:00 P60, 14:41 P25
        Sat | N6 | 09:09 P06, 10:26 P02
        """;
}
