using GameNight.Web.Startup;

return await GameNightProgram.RunAsync(args);
