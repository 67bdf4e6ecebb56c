namespace GameNight.Nights.Membership;

/// <summary>What a starting dough is called when a group is founded; hosts rename it as they like.</summary>
internal static class StyleNames
{
    public static string Of(string styleId) => styleId switch
    {
        "house-cold" => "House dough, cold",
        "counter-slice" => "Counter slice",
        "soft-pan" => "Soft pan",
        _ => styleId,
    };
}
