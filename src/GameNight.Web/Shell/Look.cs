using MudBlazor;

namespace GameNight.Web.Shell;

/// <summary>The component kit in our colours, type and shape: paper, ink, and one lamp.</summary>
internal static class Look
{
    private static readonly string[] Text = ["Atkinson Hyperlegible", "system-ui", "sans-serif"];

    public static MudTheme Theme { get; } = new()
    {
        PaletteLight = new PaletteLight
        {
            Background = "#faf6ee",
            Surface = "#fffdf8",
            Primary = "#1f2a44",
            Secondary = "#b9783a",
            Tertiary = "#f2b84b",
            TertiaryContrastText = "#24262b",
            Error = "#a3301f",
            Warning = "#8a5a00",
            Success = "#2c6440",
            Info = "#1f2a44",
            TextPrimary = "#24262b",
            TextSecondary = "#5b5f68",
            LinesDefault = "#d9d2c3",
            LinesInputs = "#24262b",
            AppbarBackground = "#faf6ee",
            AppbarText = "#24262b",
        },
        PaletteDark = new PaletteDark
        {
            Background = "#12161f",
            Surface = "#1a202d",
            Primary = "#f2b84b",
            PrimaryContrastText = "#12161f",
            Secondary = "#e0a565",
            Tertiary = "#f2b84b",
            TertiaryContrastText = "#12161f",
            Error = "#ff8d78",
            ErrorContrastText = "#12161f",
            Warning = "#f2b84b",
            WarningContrastText = "#12161f",
            Success = "#8fd3a4",
            SuccessContrastText = "#12161f",
            Info = "#dbe6f1",
            InfoContrastText = "#12161f",
            TextPrimary = "#f3eee3",
            TextSecondary = "#b5b2aa",
            LinesDefault = "#333b4b",
            LinesInputs = "#f3eee3",
            AppbarBackground = "#12161f",
            AppbarText = "#f3eee3",
        },
        Typography = new Typography { Default = new DefaultTypography { FontFamily = Text, FontSize = "1.0625rem" } },
        LayoutProperties = new LayoutProperties { DefaultBorderRadius = "3px" },
        Shadows = new Shadow { Elevation = [.. Enumerable.Repeat("none", 26)] },
    };
}
