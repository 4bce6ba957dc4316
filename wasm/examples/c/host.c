/*
 * A whole host in C: it compiles the module once, keeps the compiled code in a
 * file, gives each call a deadline, and makes a new instance after a trap.
 * Requests are read from standard input, one a line, and each reply is a line
 * of standard output.
 *
 *     host marinecalc.wasm compiled.bin <requests
 *
 * It is written for the C interface of wasmtime 3, which sets no bound on the
 * memory of an instance (later ones do, by wasmtime_store_limiter). The script
 * run beside this file fetches that, and builds and runs it.
 */
#include <pthread.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>
#include <wasi.h>
#include <wasm.h>
#include <wasmtime.h>

enum { SECONDS = 20 };

static wasm_engine_t *engine;
static wasmtime_module_t *module;

/* One instance, for one call at a time. */
static struct guest {
  wasmtime_store_t *store;
  wasmtime_linker_t *linker;
  wasmtime_instance_t instance;
  wasmtime_memory_t memory;
} guest;

/* told prints what went wrong and tells whether anything did. */
static int told(const char *doing, wasmtime_error_t *error, wasm_trap_t *trap) {
  wasm_byte_vec_t text;
  if (error == NULL && trap == NULL) return 0;
  if (error != NULL) {
    wasmtime_error_message(error, &text);
    wasmtime_error_delete(error);
  } else {
    wasm_trap_message(trap, &text);
    wasm_trap_delete(trap);
  }
  fprintf(stderr, "%s: %.*s\n", doing, (int)text.size, text.data);
  wasm_byte_vec_delete(&text);
  return 1;
}

static void *read_all(const char *name, size_t *size) {
  FILE *file = fopen(name, "rb");
  if (file == NULL) return NULL;
  fseek(file, 0, SEEK_END);
  *size = (size_t)ftell(file);
  rewind(file);
  char *bytes = malloc(*size);
  if (bytes != NULL && fread(bytes, 1, *size, file) != *size) {
    free(bytes);
    bytes = NULL;
  }
  fclose(file);
  return bytes;
}

/* The clock of the deadlines: one tick a second. */
static void *tick(void *unused) {
  for (;;) {
    sleep(1);
    wasmtime_engine_increment_epoch(engine);
  }
  return unused;
}

/* compile takes the compiled code from the file, or compiles and keeps it.
 * Compiled code is trusted: keep the file where nobody else can write. */
static int compile(const char *name, const char *kept) {
  if (access(kept, R_OK) == 0 && !told("the compiled code", wasmtime_module_deserialize_file(engine, kept, &module), NULL)) return 0;
  size_t size;
  uint8_t *bytes = read_all(name, &size);
  if (bytes == NULL) {
    perror(name);
    return 1;
  }
  wasmtime_error_t *error = wasmtime_module_new(engine, bytes, size, &module);
  free(bytes);
  if (told("compiling", error, NULL)) return 1;
  wasm_byte_vec_t code;
  if (told("keeping what was compiled", wasmtime_module_serialize(module, &code), NULL)) return 0;
  FILE *file = fopen(kept, "wb");
  if (file == NULL || fwrite(code.data, 1, code.size, file) != code.size) perror(kept);
  if (file != NULL && fclose(file) != 0) perror(kept);
  wasm_byte_vec_delete(&code);
  return 0;
}

/* call calls an export with numbers of 32 bits; the result has 32 or 64. */
static int call(const char *name, int count, const uint32_t *in, uint64_t *out) {
  wasmtime_context_t *context = wasmtime_store_context(guest.store);
  wasmtime_extern_t found;
  wasmtime_val_t args[2], result;
  wasm_trap_t *trap = NULL;
  if (!wasmtime_instance_export_get(context, &guest.instance, name, strlen(name), &found) || found.kind != WASMTIME_EXTERN_FUNC) {
    fprintf(stderr, "the module has no %s\n", name);
    return 1;
  }
  for (int i = 0; i < count; i++) args[i] = (wasmtime_val_t){.kind = WASMTIME_I32, .of.i32 = (int32_t)in[i]};
  wasmtime_context_set_epoch_deadline(context, SECONDS);
  wasmtime_error_t *error = wasmtime_func_call(context, &found.of.func, args, (size_t)count, &result, out != NULL, &trap);
  if (told(name, error, trap)) return 1;
  if (out != NULL) *out = result.kind == WASMTIME_I64 ? (uint64_t)result.of.i64 : (uint32_t)result.of.i32;
  return 0;
}

/* leave drops an instance whose memory can no longer be trusted. */
static void leave(void) {
  if (guest.linker != NULL) wasmtime_linker_delete(guest.linker);
  if (guest.store != NULL) wasmtime_store_delete(guest.store);
  memset(&guest, 0, sizeof guest);
}

/* enter makes an instance and initializes it. */
static int enter(void) {
  guest.store = wasmtime_store_new(engine, NULL, NULL);
  wasmtime_context_t *context = wasmtime_store_context(guest.store);
  wasmtime_context_set_epoch_deadline(context, SECONDS);
  wasi_config_t *wasi = wasi_config_new(); /* no arguments, files or environment */
  wasi_config_inherit_stderr(wasi);
  if (told("WASI", wasmtime_context_set_wasi(context, wasi), NULL)) return 1;
  guest.linker = wasmtime_linker_new(engine);
  if (told("WASI", wasmtime_linker_define_wasi(guest.linker), NULL)) return 1;
  wasm_trap_t *trap = NULL;
  wasmtime_error_t *error = wasmtime_linker_instantiate(guest.linker, context, module, &guest.instance, &trap);
  if (told("an instance", error, trap)) return 1;
  wasmtime_extern_t found;
  if (!wasmtime_instance_export_get(context, &guest.instance, "memory", 6, &found)) return 1;
  guest.memory = found.of.memory;
  uint64_t version;
  if (call("_initialize", 0, NULL, NULL) || call("version", 0, NULL, &version)) return 1;
  if (version == 2) return 0;
  fprintf(stderr, "the module speaks version %u of the contract, this host version 2\n", (unsigned)version);
  return 1;
}

/* answer prints the reply to one request. It gives 1 where the instance has to
 * be dropped. */
static int answer(const char *request, uint32_t size) {
  wasmtime_context_t *context = wasmtime_store_context(guest.store);
  uint64_t at, packed;
  if (call("alloc", 1, &size, &at)) return 1;
  if (at == 0) {
    puts("{\"ok\":false,\"problems\":[{\"where\":\"\",\"what\":\"the request is empty or too long\",\"allowed\":\"\",\"hint\":\"\"}]}");
    return 0;
  }
  memcpy(wasmtime_memory_data(context, &guest.memory) + at, request, size);
  if (call("call", 2, (uint32_t[]){(uint32_t)at, size}, &packed)) return 1;
  uint32_t from = (uint32_t)(packed >> 32), length = (uint32_t)packed;
  uint8_t *now = wasmtime_memory_data(context, &guest.memory); /* it may have moved */
  if ((uint64_t)from + length > wasmtime_memory_data_size(context, &guest.memory)) return 1;
  fwrite(now + from, 1, length, stdout);
  putchar('\n');
  return call("release", 1, &from, NULL) || call("release", 1, (uint32_t[]){(uint32_t)at}, NULL);
}

int main(int count, char **names) {
  if (count != 3) {
    fprintf(stderr, "host marinecalc.wasm compiled.bin <requests, one a line\n");
    return 2;
  }
  wasm_config_t *config = wasm_config_new();
  wasmtime_config_epoch_interruption_set(config, true);
  engine = wasm_engine_new_with_config(config);
  pthread_t clock;
  if (pthread_create(&clock, NULL, tick, NULL) != 0 || compile(names[1], names[2]) || enter()) return 1;
  char *line = NULL;
  size_t room = 0;
  ssize_t size;
  while ((size = getline(&line, &room, stdin)) > 0) {
    if (line[size - 1] == '\n') size--;
    if (answer(line, (uint32_t)size)) {
      puts("{\"ok\":false,\"problems\":[{\"where\":\"\",\"what\":\"the calculator stopped and is started anew\",\"allowed\":\"\",\"hint\":\"\"}]}");
      leave();
      if (enter()) return 1;
    }
  }
  free(line);
  return ferror(stdin) || fflush(stdout) != 0;
}
