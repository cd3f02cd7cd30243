using System.Net;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.DataProtection.KeyManagement;
using Microsoft.AspNetCore.DataProtection.Repositories;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Throwright.Engine.Chain;
using Throwright.Engine.Findings;
using Throwright.Engine.Model;
using Throwright.Files;
using Throwright.Formats.Drawing;
using Throwright.Papers.Curves;
using Throwright.Papers.Ladder;
using Throwright.Papers.Lever;
using Throwright.Papers.Make;
using Throwright.Papers.Marks;
using Throwright.Papers.Pack;
using Throwright.Papers.Rig;
using Throwright.Shapes;
using Throwright.Web.Cockpit;
using Throwright.Web.Editing;
using Throwright.Web.Making;
using Throwright.Web.Pages;

namespace Throwright.Web.Host;

/// <summary>The program behind the page. It listens on this computer only.</summary>
public static class WebApp
{
    public const int UsualPort = 5180;

    /// <summary>Largest upload, bytes: an aircraft file and what the form puts around it.</summary>
    private const long MostUpload = AircraftFile.MostBytes + 64 * 1024;

    /// <param name="port">0: any free one.</param>
    public static WebApplication Build(AircraftFolder folder, int port)
    {
        ArgumentNullException.ThrowIfNull(folder);
        // No arguments and no settings from the working folder: nothing there may open this to the network.
        var builder = WebApplication.CreateEmptyBuilder(new() { ContentRootPath = AppContext.BaseDirectory, EnvironmentName = "Production" });
        builder.WebHost.UseKestrelCore().ConfigureKestrel(k =>
        {
            k.Listen(IPAddress.Loopback, port);
            k.Limits.MaxRequestBodySize = MostUpload;
            k.AddServerHeader = false;
        });
        builder.Logging.AddSimpleConsole(c => c.SingleLine = true).SetMinimumLevel(LogLevel.Warning)
            // It warns of keys kept unencrypted; here they are kept nowhere.
            .AddFilter("Microsoft.AspNetCore.DataProtection", LogLevel.Error);
        var services = builder.Services;
        services.AddRoutingCore();
        // Keys of one run of the program: nothing is written to the home folder.
        services.AddDataProtection();
        services.Configure<KeyManagementOptions>(k => k.XmlRepository = new KeysInMemory());
        services.AddAntiforgery(a =>
        {
            a.Cookie.SameSite = SameSiteMode.Strict;
            a.Cookie.HttpOnly = true;
        });
        services.Configure<FormOptions>(f => f.MultipartBodyLengthLimit = MostUpload);
        services.AddRazorComponents().AddInteractiveServerComponents(c =>
        {
            c.DisconnectedCircuitRetentionPeriod = TimeSpan.FromMinutes(10);
            c.JSInteropDefaultCallTimeout = TimeSpan.FromSeconds(30);
        });
        services.AddSingleton(folder);
        services.AddSingleton(TimeProvider.System);
        services.AddSingleton<Checks>();
        services.AddSingleton<TiltMaps>();
        services.AddScoped<Viewer>();

        var app = builder.Build();
        app.UseWebSockets();
        app.Use(next => context => Gate.Pass(context, () => next(context)));
        app.Use(next => context =>
            context.Request.Path.StartsWithSegments("/app", out var rest) ? PageFiles.Serve(context, rest.Value!.TrimStart('/'))
            : context.Request.Path == "/_framework/blazor.web.js" ? PageFiles.Serve(context, "blazor.web.js")
            : next(context));
        app.UseRouting();
        app.UseAntiforgery();
        app.MapGet("/alive", () => Results.Text("alive"));
        app.MapPost("/upload", Upload);
        app.MapGet("/a/{file}/save", Download);
        app.MapGet("/a/{file}/scene", Scene);
        app.MapGet("/a/{file}/papers.pdf", Papers);
        app.MapGet("/a/{file}/order.pdf", Order);
        app.MapGet("/a/{file}/rig/{run}.pdf", Card);
        app.MapGet("/a/{file}/rig/{run}.html", RigPage);
        app.MapGet("/a/{file}/make/{run}/{name}", Made);
        app.MapGet("/a/{file}/part/{run}/{which}.glb", Part);
        app.MapGet("/a/{file}/picture/{run}/{which}.svg", Picture);
        app.MapRazorComponents<App>().AddInteractiveServerRenderMode(o =>
        {
            o.ContentSecurityFrameAncestorsPolicy = null;
            // It never leaves this computer: packing it would only cost time.
            o.DisableWebSocketCompression = true;
        });
        return app;
    }

    private static async Task<IResult> Upload(HttpContext context, AircraftFolder folder, IAntiforgery antiforgery)
    {
        // Refused by what it says of itself, before the form is read: the reader would end in an error of the server.
        if (context.Request.ContentLength is not { } length || length > MostUpload)
            return Results.Text("The file is larger than an aircraft file may be. Nothing was written.", statusCode: StatusCodes.Status413PayloadTooLarge);
        if (!await antiforgery.IsRequestValidAsync(context).ConfigureAwait(false))
            return Results.Text("The form is too old. Load the page again.", statusCode: StatusCodes.Status400BadRequest);
        var form = await context.Request.ReadFormAsync(context.RequestAborted).ConfigureAwait(false);
        if (form.Files is not [{ Length: > 0 } file])
            return Results.Redirect("/?problem=" + Uri.EscapeDataString("Choose an aircraft file first."));
        using var memory = new MemoryStream();
        await file.CopyToAsync(memory, context.RequestAborted).ConfigureAwait(false);
        var bytes = memory.ToArray();
        var name = Path.GetFileName(file.FileName);
        var read = AircraftFile.Read(name, bytes);
        if (read.Problems is [var first, ..])
            return Results.Redirect("/?problem=" + Uri.EscapeDataString($"{first.File}, line {first.Line}: {first.Found}. Expected: {first.Expected}."));
        var stem = name.EndsWith(AircraftFile.Extension, StringComparison.Ordinal) ? name[..^AircraftFile.Extension.Length] : Path.GetFileNameWithoutExtension(name);
        return folder.Create(stem, read.Text, out var problem) is { } made
            ? Results.Redirect("/a/" + Uri.EscapeDataString(made))
            : Results.Redirect("/?problem=" + Uri.EscapeDataString(problem));
    }

    private static IResult Download(string file, AircraftFolder folder) =>
        folder.Open(file) is { } session
            ? Results.File(System.Text.Encoding.UTF8.GetBytes(session.Text), "application/json", session.FileName)
            : Results.NotFound();

    private static IResult Scene(string file, string? run, HttpContext context, AircraftFolder folder, Checks checks) => AskAgain(context, () =>
        folder.Open(file)?.File.Aircraft is { } aircraft && checks.CockpitOf(aircraft) is { } cockpit
            ? Results.Json(SceneModel.Of(aircraft, cockpit, [.. aircraft.Runs.Select(r => checks.Of(aircraft, r))], string.IsNullOrEmpty(run) ? null : run))
            : Results.NotFound());

    /// <summary>The file was changed while its clearance was looked for, and the newer question went first: the same is asked of the changed file.</summary>
    private static IResult AskAgain(HttpContext context, Func<IResult> answer)
    {
        while (true)
        {
            try
            {
                return answer();
            }
            catch (OperationCanceledException)
            {
                if (context.RequestAborted.IsCancellationRequested)
                    return Results.Empty;
            }
        }
    }

    private static IResult Papers(string file, HttpContext context, AircraftFolder folder, Checks checks) => AskAgain(context, () =>
        Whole(file, folder, checks) is var (session, answer) ? Results.File(AircraftPack.Write(answer, PackOptions.For(session.Text, Paper(answer.Aircraft))), "application/pdf", $"{file}.pdf") : Results.NotFound());

    private static IResult Order(string file, HttpContext context, AircraftFolder folder, Checks checks) => AskAgain(context, () =>
        Whole(file, folder, checks) is var (session, answer) ? Results.File(AircraftPack.WriteOrder(answer, PackOptions.For(session.Text, Paper(answer.Aircraft))), "application/pdf", $"{file}-order.pdf") : Results.NotFound());

    private static IResult Card(string file, string run, AircraftFolder folder, Checks checks) =>
        One(file, run, folder, checks) is var (session, aircraft, answer) ? Results.File(AircraftPack.WriteCard(aircraft, answer, PackOptions.For(session.Text, Paper(aircraft))), "application/pdf", $"{run}-rigging-card.pdf") : Results.NotFound();

    /// <summary>For the phone: always as a download, never shown from this address.</summary>
    private static IResult RigPage(string file, string run, AircraftFolder folder, Checks checks) =>
        One(file, run, folder, checks) is var (session, aircraft, answer) ? Results.File(RiggingPage.Write(aircraft, answer, PackOptions.FileIdOf(session.Text)), "text/html", $"{run}-rigging.html") : Results.NotFound();

    private static IResult Made(string file, string run, string name, AircraftFolder folder, Checks checks, TimeProvider clock)
    {
        if (One(file, run, folder, checks) is not var (_, aircraft, answer))
            return Results.NotFound();
        var choice = new ShopChoice(Paper(aircraft), DateOnly.FromDateTime(clock.GetLocalNow().Date));
        return RunParts.Of(aircraft, answer, "all", new FigureWriter(aircraft.Display), choice, []).SelectMany(s => s.Files).FirstOrDefault(f => f.Name == name) is { } made
            ? Results.File(made.Content.ToArray(), "application/octet-stream", made.Name)
            : Results.NotFound();
    }

    /// <summary>For looking at on the page.</summary>
    private static IResult Part(string file, string run, string which, AircraftFolder folder) =>
        folder.Open(file)?.File.Aircraft is { } aircraft && aircraft.Runs.FirstOrDefault(r => r.Id == run) is { } of && PartScene.Of(of, which, new FigureWriter(aircraft.Display)) is { } scene
            ? Results.File(scene.Glb(), "model/gltf-binary")
            : Results.NotFound();

    private static ShopPaper Paper(Aircraft aircraft) => aircraft.Display.Length == LengthUnit.Inch ? ShopPaper.Letter : ShopPaper.A4;

    private static (EditingSession, AircraftAnswer)? Whole(string file, AircraftFolder folder, Checks checks) =>
        folder.Open(file) is { File.Aircraft: { } aircraft } session
            ? (session, new AircraftAnswer(aircraft, aircraft.Runs.Select(r => checks.Of(aircraft, r)).ToEquatableList()) { Cockpit = checks.CockpitOf(aircraft) })
            : null;

    private static (EditingSession, Aircraft, RunAnswer)? One(string file, string run, AircraftFolder folder, Checks checks) =>
        folder.Open(file) is { File.Aircraft: { } aircraft } session && aircraft.Runs.FirstOrDefault(r => r.Id == run) is { } of ? (session, aircraft, checks.Of(aircraft, of)) : null;

    private static IResult Picture(string file, string run, string which, AircraftFolder folder, Checks checks)
    {
        if (folder.Open(file)?.File.Aircraft is not { } aircraft || aircraft.Runs.FirstOrDefault(r => r.Id == run) is not { } of)
            return Results.NotFound();
        var answer = checks.Of(aircraft, of);
        var layout = RunLadder.LayoutOf(answer, aircraft.Display);
        var (picture, colours) = which switch
        {
            "sheet" => (LadderSheet.Page(layout, answer.Curve, LadderSheet.LabelsOf(answer)).Picture, Palettes.Screen),
            "gauge" => (LadderDrawing.TrueSize(layout).Picture, Palettes.Paper),
            "lever" when answer.Sweep is { } sweep => (LeverDrawing.Page(sweep, layout.Labels, aircraft.Display, new() { TipLength = of.LeverEnd!.Tip.Nominal.Metres }), Palettes.Screen),
            _ => (null, Palettes.Screen),
        };
        return picture is null
            ? Results.NotFound()
            : Results.File(System.Text.Encoding.UTF8.GetBytes(SvgWriter.Write(picture, colours)), "image/svg+xml", $"{run}-{which}.svg");
    }

    private sealed class KeysInMemory : IXmlRepository
    {
        private readonly System.Collections.Concurrent.ConcurrentQueue<System.Xml.Linq.XElement> keys = new();

        public IReadOnlyCollection<System.Xml.Linq.XElement> GetAllElements() => [.. keys];

        public void StoreElement(System.Xml.Linq.XElement element, string friendlyName) => keys.Enqueue(element);
    }
}
