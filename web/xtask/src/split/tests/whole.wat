;; A page in small: `app::later` and `app::other` come later.
(module
  (type $unary (func (param i32) (result i32)))
  (import "glue" "note" (func $"glue::note" (param i32)))
  (import "glue" "warn" (func $"glue::warn" (param i32)))
  (memory (export "memory") 1)
  ;; The page's 7, a byte without a name, what `later` needs, what both need, what points at a closure.
  (data (i32.const 8) "\07\00\00\00\05\00\00\00\11\00\00\00\13\00\00\00")
  (data (i32.const 24) "\02\00\00\00")
  (global $stack (mut i32) (i32.const 1000))
  (table (export "table") 5 5 funcref)
  (elem (i32.const 1)
    $"app::page::closure"
    $"core::ops::FnOnce::call_once"
    $"<app::later::Thing as core::ops::Neg>::neg"
    $"lib::unneeded")

  (func $"_ZN3app5start17h0123456789abcdefE" (export "startPage")
    (call $"glue::note" (i32.const 1)))
  (func $"app::page::open" (export "page__open") (param i32) (result i32)
    (call $"_ZN3app5later4view17h0123456789abcdefE" (local.get 0)))
  (func $"app::page::open_other" (export "page__open_other") (param i32) (result i32)
    (call $"app::other::view" (local.get 0)))
  (func $"app::page::call" (export "page__call") (param $slot i32) (param i32) (result i32)
    (call_indirect (type $unary) (local.get 1) (local.get $slot)))
  (func $"app::page::stack" (export "page__stack") (result i32)
    (global.get $stack))
  (func $"app::page::own" (export "page__own") (param i32) (result i32)
    (i32.add (local.get 0) (i32.load (i32.const 8))))
  (func $"app::page::closure" (param i32) (result i32)
    (i32.mul (local.get 0) (i32.const 10)))

  ;; Takes room on the stack, stores what it was given, and goes through every kind of call.
  (func $"_ZN3app5later4view17h0123456789abcdefE" (param i32) (result i32)
    (global.set $stack (i32.sub (global.get $stack) (i32.const 16)))
    (i32.store (i32.const 32) (local.get 0))
    (call $"glue::warn" (local.get 0))
    (i32.add
      (i32.add
        (call $"app::page::own" (local.get 0))
        (call $"lib::helper" (local.get 0)))
      (i32.add
        (call $"lib::both" (local.get 0))
        (call_indirect (type $unary) (local.get 0) (i32.load (i32.const 24))))))
  (func $"app::later::inside" (param i32) (result i32)
    (i32.add (local.get 0) (i32.const 2000)))
  (func $"<app::later::Thing as core::ops::Neg>::neg" (param i32) (result i32)
    (i32.sub (i32.const 0) (local.get 0)))
  ;; A closure of the chunk's, wrapped under a general name.
  (func $"core::ops::FnOnce::call_once" (param i32) (result i32)
    (call $"app::later::inside" (local.get 0)))
  (func $"lib::helper" (param i32) (result i32)
    (i32.mul (local.get 0) (i32.load (i32.const 16))))

  (func $"app::other::view" (param i32) (result i32)
    (call $"lib::both" (i32.add (local.get 0) (i32.const 1))))
  (func $"lib::both" (param i32) (result i32)
    (call $"lib::inside_both" (local.get 0)))
  (func $"lib::inside_both" (param i32) (result i32)
    (i32.add (local.get 0) (i32.load offset=12 (i32.const 8))))

  (func $"lib::unneeded" (param i32) (result i32)
    (i32.add (local.get 0) (i32.const 5))))
