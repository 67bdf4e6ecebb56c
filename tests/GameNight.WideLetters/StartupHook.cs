using System.Reflection;
using System.Runtime.CompilerServices;
using GameNight.WideLetters;

/// <summary>
/// Gives the language of wide letters to an app in a process of its own, before it starts: named in DOTNET_STARTUP_HOOKS, which
/// asks for this name outside of every namespace. The app finds the language like any other, by a folder of satellites, and
/// speaks it to browsers that prefer it.
/// </summary>
internal static class StartupHook
{
    private const string ProgramFolder = "APP_CONTEXT_BASE_DIRECTORY";

    public static void Initialize()
    {
        if (Assembly.GetEntryAssembly()?.GetName().Name != "GameNight.Web")
        {
            return;
        }

        var folder = Directory.CreateTempSubdirectory("gamenight-wide-letters-");
        var program = AppContext.GetData(ProgramFolder);
        try
        {
            File.WriteAllBytes(Path.Combine(folder.CreateSubdirectory(PseudoLanguage.Culture.Name).FullName, "GameNight.Web.resources.dll"), []);
            AppContext.SetData(ProgramFolder, folder.FullName);
            RuntimeHelpers.RunClassConstructor(Assembly.Load("GameNight.Web").GetType("GameNight.Web.Wording.Language")!.TypeHandle);
        }
        finally
        {
            AppContext.SetData(ProgramFolder, program);
            folder.Delete(recursive: true);
        }

        PseudoLanguage.Install();
    }
}
