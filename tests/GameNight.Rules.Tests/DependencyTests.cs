using ArchUnitNET.Domain;
using ArchUnitNET.Fluent;
using ArchUnitNET.Loader;
using ArchUnitNET.xUnitV3;
using GameNight.Nights;
using GameNight.Planning;
using GameNight.Web.Startup;
using static ArchUnitNET.Fluent.ArchRuleDefinition;

namespace GameNight.Rules.Tests;

public class DependencyTests
{
    // Our own assemblies only: loading the solver's makes every run many seconds longer.
    private static readonly Architecture Ours = new ArchLoader()
        .LoadAssemblies(typeof(NightPlanner).Assembly, typeof(NightsRegistration).Assembly, typeof(GameNightApp).Assembly)
        .Build();

    /// <summary>Folders of the planner in the order they may use one another: each only those named before it.</summary>
    private static readonly string[][] Layers =
    [
        ["Quantities", "Reference"],
        ["Guests"],
        ["Safety"],
        ["Appetite", "Dough"],
        ["Heat"],
        ["Fermentation"],
        ["Toppings"],
        ["Foods"],
        ["Sauce", "Cheese"],
        ["Timeline"],
        ["Live"],
        ["Dates"],
    ];

    [Fact]
    public void Planning_references_nothing_but_time_and_the_solver()
    {
        var references = typeof(NightPlanner).Assembly.GetReferencedAssemblies()
            .Select(name => name.Name!)
            .Where(name => !name.StartsWith("System", StringComparison.Ordinal));

        Assert.Subset(new HashSet<string> { "NodaTime", "Google.OrTools", "Google.Protobuf" }, references.ToHashSet());
    }

    [Fact]
    public void Web_references_neither_the_database_mapping_nor_the_solver()
    {
        var references = typeof(GameNightApp).Assembly.GetReferencedAssemblies().Select(name => name.Name!).ToList();

        Assert.DoesNotContain(references, name => name.StartsWith("Microsoft.EntityFrameworkCore", StringComparison.Ordinal));
        Assert.DoesNotContain(references, name => name.StartsWith("Npgsql", StringComparison.Ordinal));
        Assert.DoesNotContain("Google.OrTools", references);
    }

    [Fact]
    public void Only_solver_models_see_the_solver() => Assert.All(
        SourceTree.Files("src").Where(file => file.Text.Contains("Google.OrTools", StringComparison.Ordinal)),
        file => Assert.EndsWith("Model.cs", file.Path, StringComparison.Ordinal));

    [Fact]
    public void Folders_of_the_planner_point_one_way()
    {
        foreach (var (path, text) in SourceTree.Files("src/GameNight.Planning"))
        {
            var parts = path.Split('/');
            var layer = Array.FindIndex(Layers, folders => folders.Contains(parts[2]));
            if (layer < 0)
            {
                continue;
            }

            var allowed = Layers.Take(layer + 1).SelectMany(folders => folders)
                .Where(folder => folder == parts[2] || !Layers[layer].Contains(folder));
            var used = SourceTree.Usings(text)
                .Where(name => name.StartsWith("GameNight.Planning.", StringComparison.Ordinal))
                .Select(name => name.Split('.')[2]);
            Assert.All(used, folder => Assert.True(allowed.Contains(folder), $"{path} uses {folder}"));
        }
    }

    [Fact]
    public void Guest_pages_use_neither_the_component_kit_nor_host_pages()
    {
        IArchRule rule = Types().That().ResideInNamespaceMatching(@"^GameNight\.Web\.Guests")
            .Should().NotDependOnAnyTypesThat().ResideInNamespaceMatching(@"^(MudBlazor|GameNight\.Web\.Host)");
        rule.Check(Ours);
    }

    [Fact]
    public void Records_do_not_mention_the_database_mapping() => Assert.All(
        SourceTree.Files("src/GameNight.Nights/Records"),
        file => Assert.DoesNotContain("EntityFrameworkCore", file.Text, StringComparison.Ordinal));

    [Fact]
    public void Nothing_but_the_session_makes_database_contexts() => Assert.All(
        SourceTree.Files("src").Where(file => file.Text.Contains("IDbContextFactory", StringComparison.Ordinal)),
        file => Assert.EndsWith("Storage/GroupSession.cs", file.Path, StringComparison.Ordinal));
}
