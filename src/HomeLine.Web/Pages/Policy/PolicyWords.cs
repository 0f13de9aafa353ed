using HomeLine.LineCare.Policy;

namespace HomeLine.Web.Pages.Policy;

/// <summary>Rules in words: what group they belong to, how they are known.</summary>
public static class PolicyWords
{
    /// <summary>The care item or the office matter a rule is about.</summary>
    public static string Group(this PolicyRule rule) => rule.Id.Split('.')[0] switch
    {
        "dressing" or "securement" or "seal" => "Dressings and securement",
        "connector" or "hub" => "Connectors",
        "set" or "filter" => "Administration sets",
        "port" or "flush" => "Ports and flushes",
        "length" or "girth" or "midline" or "removal" => "Length, girth and removal",
        "sitecheck" or "sitelook" or "nursecheck" => "Looking at the site",
        "chlorhexidine" or "skin" or "mask" => "Skin and materials",
        "labs" or "level" or "specimen" or "dose" or "nutrition" or "firstdose" => "Labs, doses and nutrition",
        "recertification" or "resumption" or "initialvisit" or "assessment" or "order" or "frequency" => "Orders and the plan of care",
        "validation" or "scope" or "exception" or "policy" => "Validation, scope and exceptions",
        "calendar" or "count" or "horizon" => "How days are counted",
        "fever" or "screen" => "Symptom screen",
        "minutes" or "visit" or "told" or "frozen" or "shift" or "reserve" or "starts" => "Visits and the working day",
        "risk" => "Weights of the planner",
        _ => "Other rules",
    };

    public static string InWords(this RuleStanding standing) => standing switch
    {
        RuleStanding.Published => "published, read",
        RuleStanding.PublishedSecondHand => "published, second hand",
        RuleStanding.CommonPractice => "common practice",
        RuleStanding.FromMemory => "from memory, to be verified",
        RuleStanding.OwnDefault => "our own choice",
        _ => throw new ArgumentOutOfRangeException(nameof(standing), standing, "Unknown standing"),
    };
}
